using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Needs;

/// <summary>What an author lets stay open although an energy comes back: <c>restore e while j open because "…"</c>.</summary>
internal static class AllowedOpen
{
    /// <summary>What may be open at an action of the refit.</summary>
    public static ImmutableArray<MachineItem> At(Procedure procedure, Verb verb, MachineItem? target) =>
        [.. Rules(procedure, verb, target).Select(open => open.Item)];

    /// <summary>The same, each with the reason.</summary>
    public static IEnumerable<OpenItem> Rules(Procedure procedure, Verb verb, MachineItem? target) =>
        verb != Verb.Restore
            ? []
            : procedure.Rules.OfType<OpenRule>()
                .Where(rule => rule.Action.Verb == verb && rule.Action.Target == target)
                .SelectMany(rule => rule.Open);
}
