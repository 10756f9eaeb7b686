using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Jobs.Replays;

/// <summary>What a reading must be, in words.</summary>
public static class Limits
{
    /// <summary>The words.</summary>
    /// <param name="limit">The limit.</param>
    public static string Say(Limit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return limit.Relation switch
        {
            LimitRelation.AtMost => $"at most {limit.Quantity.Print()}",
            LimitRelation.AtLeast => $"at least {limit.Quantity.Print()}",
            LimitRelation.Less => $"below {limit.Quantity.Print()}",
            LimitRelation.More => $"above {limit.Quantity.Print()}",
            _ => limit.Quantity.Print(),
        };
    }
}
