using ProcScript.Model.Procedures;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Tells refit rules apart that several calls bring.</summary>
internal static class RefitRules
{
    /// <summary>Whether two rules are the same line of a text with the same names for its variables.</summary>
    public static bool AreOne(RefitRule one, RefitRule other) => one.Source == other.Source && (one, other) switch
    {
        (OrderRule first, OrderRule second) => first.Earlier == second.Earlier && first.Later == second.Later,
        (OpenRule first, OpenRule second) => first.Action == second.Action,
        (CheckRule first, CheckRule second) => first.Text == second.Text && first.Before == second.Before && first.After == second.After,
        (TestRule first, TestRule second) => first.Title == second.Title && first.Before == second.Before && first.After == second.After,
        _ => false,
    };
}
