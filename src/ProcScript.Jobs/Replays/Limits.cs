using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Jobs.Replays;

/// <summary>What a reading must be, in words.</summary>
internal static class Limits
{
    /// <summary>The words.</summary>
    public static string Say(Limit limit) => limit.Relation switch
    {
        LimitRelation.AtMost => $"at most {limit.Quantity.Print()}",
        LimitRelation.AtLeast => $"at least {limit.Quantity.Print()}",
        LimitRelation.Less => $"below {limit.Quantity.Print()}",
        LimitRelation.More => $"above {limit.Quantity.Print()}",
        _ => limit.Quantity.Print(),
    };
}
