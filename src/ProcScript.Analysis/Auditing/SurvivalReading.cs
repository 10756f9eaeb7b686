using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;

namespace ProcScript.Analysis.Auditing;

/// <summary>Says why nothing notices a mistake, from the runs of the library as it is: what its jobs act on, and what their steps ask for.</summary>
internal sealed class SurvivalReading
{
    private readonly ILookup<string, ImmutableArray<PerformedAction>> _runs;
    private readonly Dictionary<string, FrozenSet<string>> _touched;

    /// <summary>Reads the runs of a check.</summary>
    public SurvivalReading(LibraryReport sound)
    {
        _runs = sound.Procedures
            .Where(one => one is { IsProven: true, Outcome: { Strip: not null, Refit: not null } })
            .ToLookup(
                one => one.Procedure.Machine.Name,
                one => (ImmutableArray<PerformedAction>)[.. one.Outcome.Strip!.Actions, .. one.Outcome.Refit!.Actions],
                StringComparer.Ordinal);
        _touched = _runs.ToDictionary(
            runs => runs.Key,
            runs => runs.SelectMany(actions => actions).Where(action => action.Target is not null).Select(action => NameOf(action.Target!)).ToFrozenSet(StringComparer.Ordinal),
            StringComparer.Ordinal);
    }

    /// <summary>Why.</summary>
    /// <param name="mistake">A mistake that nothing notices.</param>
    /// <param name="packParts">What packs say otherwise with it.</param>
    public Survival Of(Mistake mistake, ImmutableArray<string> packParts)
    {
        var by = mistake.InProcedure || mistake.Item.Length == 0 ? null : AskedElsewhere(mistake);
        var touched = _touched.GetValueOrDefault(mistake.Machine, []);
        var reason = packParts.Length > 0 ? SurvivalReason.PackOnly
            : mistake.InProcedure ? SurvivalReason.SameJob
            : mistake.Item.Length > 0 && !touched.Contains(mistake.Item) ? SurvivalReason.ItemUntouched
            : !mistake.Named.IsEmpty && !mistake.Named.Any(touched.Contains) ? SurvivalReason.NamedUntouched
            : by is { Length: > 0 } ? SurvivalReason.AskedElsewhere
            : SurvivalReason.NeverAsked;
        return new Survival(reason, by ?? "", packParts);
    }

    /// <summary>
    /// A step on another item that asks for the same as one on the item of the fact does, in a run where that is so. Null where no step asks for what
    /// the fact says, empty where in some run nothing else does.
    /// </summary>
    private string? AskedElsewhere(Mistake mistake)
    {
        string? found = null;
        foreach (var actions in _runs[mistake.Machine])
        {
            var asked = Asked(actions, mistake);
            if (asked.Count == 0)
            {
                continue;
            }

            if (Other(actions, asked, mistake) is not { } other)
            {
                return "";
            }

            found ??= other;
        }

        return found;
    }

    /// <summary>What steps ask for because of the fact; where it is no condition, what those on its item ask of what it names.</summary>
    private static HashSet<(StateVariable Variable, int MetBy)> Asked(ImmutableArray<PerformedAction> actions, Mistake mistake)
    {
        var asked = actions.SelectMany(action => action.Needs).Where(met => IsOf(mistake, met.Need)).ToList();
        return (asked.Count > 0
                ? asked
                : actions.Where(action => action.Target is { } target && NameOf(target) == mistake.Item)
                    .SelectMany(action => action.Needs)
                    .Where(met => mistake.Named.Contains(NameOf(met.Need.Item))))
            .Select(met => (met.Need.Variable, met.MetBy))
            .ToHashSet();
    }

    /// <summary>A step on another item that asks for the same, and not because of the fact.</summary>
    private static string? Other(ImmutableArray<PerformedAction> actions, HashSet<(StateVariable Variable, int MetBy)> asked, Mistake mistake) => actions
        .Where(action => action.Target is { } target && NameOf(target) != mistake.Item
            && action.Needs.Any(met => asked.Contains((met.Need.Variable, met.MetBy)) && !IsOf(mistake, met.Need)))
        .Select(action => $"{ActionTable.Row(action.Verb).Word} {action.Target!.Name}")
        .FirstOrDefault();

    private static bool IsOf(Mistake mistake, Need need) => need.Declared is { Declared: var stated }
        && stated.Path == mistake.Place.Path && stated.Span.Start < mistake.Place.Span.End && mistake.Place.Span.Start < stated.Span.End;

    private static string NameOf(MachineItem item) => CanonicalName.Base(item.Name);
}
