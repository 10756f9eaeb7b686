using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching.Search;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Reaching;

/// <summary>
/// What has a bearing on some goals of a machine, as a problem of numbers. Whatever has been brought about is taken to stay, so that no way costs less
/// than it does here; whether one can be worked is for the proof to say.
/// </summary>
internal sealed class ReachGraph
{
    private readonly Dictionary<FreeingGoal, int> _numbers = [];
    private readonly List<FreeingGoal> _goals = [];
    private readonly ILookup<MachineItem, MachineItem> _disturbed;

    private ReachGraph(MachineFacts facts, Func<FreeingGoal, double> cost, ImmutableArray<FreeingGoal> wanted, bool isWritten)
    {
        _disturbed = facts.Machine.Parts.Where(part => !part.RenewWith.IsEmpty).Select(part => (Item: (MachineItem)part, part.RenewWith))
            .Concat(facts.Machine.Joints.Where(joint => !joint.RenewWith.IsEmpty).Select(joint => (Item: (MachineItem)joint, joint.RenewWith)))
            .SelectMany(one => one.RenewWith.Select(by => (by, one.Item)))
            .ToLookup(one => one.by, one => one.Item);
        var clauses = new FreeingClauses(facts) { InFull = true };
        var needs = new List<int[][]>();
        var along = new List<int[]>();
        int[] roots = [.. wanted.Select(Number)];
        for (var node = 0; node < _goals.Count; node++)
        {
            var goal = _goals[node];
            var needed = clauses.Of(goal);
            needs.Add(!isWritten && IsNever(goal, needed)
                ? [[]]
                : [.. needed.Select(clause => clause.Ways.Select(Number).Distinct().ToArray())]);
            along.Add([.. Along(goal).Select(Number)]);
        }

        Problem = new ClosureProblem([.. _goals.Select(cost)], [.. needs], [.. along], roots);
    }

    /// <summary>The problem.</summary>
    public ClosureProblem Problem { get; }

    /// <summary>What a node stands for.</summary>
    public FreeingGoal this[int node] => _goals[node];

    /// <summary>The node of a goal; -1 where nothing that is wanted has to do with it.</summary>
    public int NodeOf(FreeingGoal goal) => _numbers.GetValueOrDefault(goal, -1);

    /// <summary>Gathers all that some goals may need.</summary>
    /// <param name="facts">The machine.</param>
    /// <param name="cost">What it costs to bring a goal about.</param>
    /// <param name="wanted">The goals.</param>
    /// <param name="isWritten">Whether people have written how it is done, so that nothing of it is out of the question.</param>
    public static ReachGraph Of(MachineFacts facts, Func<FreeingGoal, double> cost, ImmutableArray<FreeingGoal> wanted, bool isWritten = false) =>
        new(facts, cost, wanted, isWritten);

    private int Number(FreeingGoal goal)
    {
        if (!_numbers.TryGetValue(goal, out var number))
        {
            _numbers.Add(goal, number = _goals.Count);
            _goals.Add(goal);
        }

        return number;
    }

    /// <summary>
    /// What serves once is not tightened again, so that to loosen it leads nowhere. And no energy stays live while something comes off for its proof to be
    /// made at once: it is isolated first, and proved to be off where somebody can get at the place.
    /// </summary>
    private static bool IsNever(FreeingGoal goal, List<FreeingClause> needed) =>
        goal is { Kind: FreeingKind.Slack, Item: Joint { SingleUse: true } }
        || (goal.Kind == FreeingKind.ProvedAtOnce && needed.Exists(clause => clause.About is Part or Joint));

    /// <summary>What has to be done too: what serves once or is disturbed is renewed.</summary>
    private IEnumerable<FreeingGoal> Along(FreeingGoal goal)
    {
        if (goal is { Kind: FreeingKind.Switched, Item: Energy { VerifyAt: not null } energy })
        {
            // What is isolated is proved to be off, sooner or later.
            return [new FreeingGoal(FreeingKind.Proved, energy)];
        }

        if (goal.Kind is not (FreeingKind.Off or FreeingKind.Out))
        {
            return [];
        }

        var renewed = _disturbed[goal.Item];
        if (goal.Item is Part part)
        {
            // What is disturbed by something inside is so by the part that takes that along, unless it goes along itself.
            renewed = renewed.Concat(part.Children.SelectMany(Inside).SelectMany(inner => _disturbed[inner]).Where(item => !LiesIn(item, part)));
            renewed = part.SingleUse ? renewed.Prepend(part) : renewed;
        }

        return renewed.Where(item => item is not Joint { SingleUse: true }).Select(item => new FreeingGoal(FreeingKind.Renewed, item))
            .Concat(renewed.Where(item => item is Joint { SingleUse: true }).Select(item => new FreeingGoal(FreeingKind.Off, item)))
            .Distinct();
    }

    private static IEnumerable<Part> Inside(Part part) => part.Children.SelectMany(Inside).Prepend(part);

    private static bool LiesIn(MachineItem item, Part part) => item switch
    {
        Part inner => inner.IsWithin(part),
        Joint joint => joint.Owner.IsWithin(part),
        _ => false,
    };
}
