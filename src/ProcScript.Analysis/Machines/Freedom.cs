using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines;

/// <summary>
/// What can be got off a machine at all. Everything that has been brought about once is taken to stay, so what is not free here
/// is stuck in earnest. Each goal waits for the first thing that it still lacks; the work is linear in what the goals need.
/// </summary>
internal sealed class Freedom
{
    private const int NotReached = -1;

    private readonly Machine _machine;
    private readonly int[] _ranks;
    private readonly List<FreeingGoal>?[] _waiting;
    private readonly List<FreeingClause>?[] _clauses;
    private readonly int[] _next;
    private readonly HashSet<MachineItem> _stuckItems;

    /// <summary>Works out what can be got off.</summary>
    public Freedom(MachineFacts facts)
    {
        _machine = facts.Machine;
        var count = (2 * _machine.Joints.Length) + (2 * _machine.Parts.Length)
            + _machine.Energies.Length + _machine.Fluids.Length + _machine.Controls.Length;
        _ranks = new int[count];
        Array.Fill(_ranks, NotReached);
        _waiting = new List<FreeingGoal>?[count];
        _clauses = new List<FreeingClause>?[count];
        _next = new int[count];
        var clauses = new FreeingClauses(facts);
        var goals = FreeingClauses.Goals(_machine).ToList();
        var open = new Queue<FreeingGoal>(goals);
        foreach (var goal in goals)
        {
            _clauses[NumberOf(goal)] = clauses.Of(goal);
        }

        var reached = 0;
        while (open.TryDequeue(out var goal))
        {
            if (!IsReached(goal) && Advance(goal))
            {
                var number = NumberOf(goal);
                _ranks[number] = reached++;
                _clauses[number] = null;
                _waiting[number]?.ForEach(open.Enqueue);
                _waiting[number] = null;
            }
        }

        Stuck = [.. goals.Where(goal => !IsReached(goal))];
        _stuckItems = [.. Stuck.Where(goal => goal.Kind is not (FreeingKind.Aside or FreeingKind.Slack)).Select(goal => goal.Item)];
    }

    /// <summary>The goals that nothing brings about, in the order of declaration.</summary>
    public ImmutableArray<FreeingGoal> Stuck { get; }

    /// <summary>Whether nothing ever meets a need, so that a finding on the machine says so already.</summary>
    public bool IsStuck(Need need) => _stuckItems.Contains(need.Item) && need switch
    {
        PartOutOfTheWay or PartAside => !IsReached(new FreeingGoal(FreeingKind.Aside, need.Item)),
        _ => true,
    };

    /// <summary>
    /// The place of a goal among those that can be brought about: what brings it about first has lower places. Null where
    /// nothing does.
    /// </summary>
    public int? Rank(FreeingGoal goal) => _ranks[NumberOf(goal)] is not NotReached and var rank ? rank : null;

    /// <summary>What a stuck goal lacks.</summary>
    public IEnumerable<FreeingClause> Lacks(FreeingGoal goal) =>
        _clauses[NumberOf(goal)]!.Where(clause => !IsGiven(clause));

    private bool IsReached(FreeingGoal goal) => _ranks[NumberOf(goal)] != NotReached;

    private bool IsGiven(FreeingClause clause)
    {
        foreach (var way in clause.Ways)
        {
            if (IsReached(way))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The place of a goal among all that there could be.</summary>
    private int NumberOf(FreeingGoal goal)
    {
        var parts = 2 * _machine.Joints.Length;
        var services = parts + (2 * _machine.Parts.Length);
        return goal switch
        {
            { Kind: FreeingKind.Off } => 2 * goal.Item.Index,
            { Kind: FreeingKind.Slack } => (2 * goal.Item.Index) + 1,
            { Kind: FreeingKind.Out } => parts + (2 * goal.Item.Index),
            { Kind: FreeingKind.Aside } => parts + (2 * goal.Item.Index) + 1,
            { Item: Energy } => services + goal.Item.Index,
            { Item: Fluid } => services + _machine.Energies.Length + goal.Item.Index,
            _ => services + _machine.Energies.Length + _machine.Fluids.Length + goal.Item.Index,
        };
    }

    /// <summary>Passes what a goal has already; where it still lacks something, the goal waits for all that would give it.</summary>
    private bool Advance(FreeingGoal goal)
    {
        var clauses = _clauses[NumberOf(goal)]!;
        ref var next = ref _next[NumberOf(goal)];
        while (next < clauses.Count && IsGiven(clauses[next]))
        {
            next++;
        }

        if (next == clauses.Count)
        {
            return true;
        }

        foreach (var way in clauses[next].Ways)
        {
            (_waiting[NumberOf(way)] ??= []).Add(goal);
        }

        return false;
    }
}
