using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Necessity;

/// <summary>
/// Finds the lines that a procedure can lose, all together, and still be proven and do what it is for; and of those that stay, none
/// can be lost besides. First goes what no wanted line leans on in the runs at hand; then each line that stays is tried, unless a
/// run shows that it cannot go. What counts is every variant and every argument, and every procedure that calls this one.
/// </summary>
internal sealed class NeedlessLines
{
    private readonly ProcedureFamily _family;
    private readonly StepUnits _units;
    private readonly LineLinks _links;
    private readonly ImmutableArray<SpelledProcedure> _spelled;
    private readonly WorkBudget _budget;
    private readonly HashSet<int> _removed = [];
    private ImmutableArray<StripRun> _runs;

    private NeedlessLines(ProcedureFamily family)
    {
        _family = family;
        _units = new StepUnits(family);
        _links = new LineLinks(_units, family);
        _runs = [.. family.All.Select(member => member.Outcome.Strip!)];
        _spelled = [.. family.All.Select(SpelledProcedure.Of)];
        _budget = new WorkBudget(_spelled.Sum(procedure => procedure.Length));
    }

    /// <summary>
    /// The lines in groups, each of which can go by itself: what is opened, moved or switched for the sake of another line of the
    /// group, and that. Empty where a variant is not proven or has no goal, for then nobody can say what is needed.
    /// </summary>
    public static ImmutableArray<NeedlessGroup> Of(ProcedureFamily family) =>
        family.Own.All(member => member.Outcome is { IsProven: true, Procedure.Goals.IsEmpty: false }) ? new NeedlessLines(family).Find() : [];

    private ImmutableArray<NeedlessGroup> Find()
    {
        var idle = _links.Idle();
        if (idle.Count > 0 && !TryRemove(idle))
        {
            foreach (var unit in idle.OrderDescending())
            {
                TryRemove([unit]);
            }
        }

        while (TryEach())
        {
        }

        if (_removed.Count == 0 || !_family.All.All(member => SpelledProcedure.IsProvenWithout(member, _units, _removed)))
        {
            return [];
        }

        var time = new NeedlessTime(_family, _units);
        return [.. Groups().Select(group => new NeedlessGroup([.. group.Select(unit => _units.Line(unit).Span)], time.Of(group)))];
    }

    /// <summary>Tries every line that is not sure to be needed, the last first. Whether any could go.</summary>
    private bool TryEach()
    {
        var certain = new HashSet<int>();
        foreach (var run in _runs)
        {
            CertainNeeds.Find(run, _units, _budget, certain);
        }

        var any = false;
        for (var unit = _units.Count - 1; unit >= 0; unit--)
        {
            any |= !_units.IsWanted(unit) && !certain.Contains(unit) && !_removed.Contains(unit) && TryRemove([unit]);
        }

        return any;
    }

    private bool TryRemove(IReadOnlyCollection<int> units)
    {
        HashSet<int> removed = [.. _removed, .. units];
        if (_units.LoosenedFirst.Any(pair => removed.Contains(pair.Loosened) && !removed.Contains(pair.Undone)) || Try(removed) is not { } runs)
        {
            return false;
        }

        _removed.UnionWith(units);
        _runs = runs;
        return true;
    }

    /// <summary>Performs everything without some lines; null where something is no longer proven, or too much has been tried.</summary>
    private ImmutableArray<StripRun>? Try(HashSet<int> removed)
    {
        var runs = ImmutableArray.CreateBuilder<StripRun>(_spelled.Length);
        foreach (var procedure in _spelled)
        {
            if (!_budget.Spend(procedure.Length) || procedure.Without(_units, removed) is not { } run)
            {
                return null;
            }

            runs.Add(run);
        }

        return runs.ToImmutable();
    }

    /// <summary>The removed lines by what hangs together; all in one where a group cannot go by itself.</summary>
    private ImmutableArray<ImmutableArray<int>> Groups()
    {
        var groupOf = _removed.ToDictionary(unit => unit, unit => new List<int> { unit });
        foreach (var (from, to) in _links.All.Where(link => _removed.Contains(link.From) && _removed.Contains(link.To)))
        {
            var (kept, joined) = groupOf[from].Count < groupOf[to].Count ? (groupOf[to], groupOf[from]) : (groupOf[from], groupOf[to]);
            if (kept != joined)
            {
                kept.AddRange(joined);
                joined.ForEach(unit => groupOf[unit] = kept);
            }
        }

        ImmutableArray<ImmutableArray<int>> groups =
            [.. groupOf.Values.Distinct().Select(group => group.Order().ToImmutableArray()).OrderBy(group => group[0])];
        return groups.Length == 1 || groups.All(group => Try([.. group]) is not null) ? groups : [[.. _removed.Order()]];
    }
}

/// <summary>Lines that can go together.</summary>
/// <param name="Lines">Where they stand in the text of the procedure, in the order in which they are performed.</param>
/// <param name="Seconds">What they cost, with the way back.</param>
internal sealed record NeedlessGroup(ImmutableArray<TextSpan> Lines, double Seconds);
