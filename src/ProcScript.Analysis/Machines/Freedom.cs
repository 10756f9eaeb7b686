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
    private readonly Dictionary<FreeingGoal, List<FreeingClause>> _stuckClauses;
    private readonly HashSet<MachineItem> _stuckItems;

    /// <summary>Works out what can be got off.</summary>
    public Freedom(MachineFacts facts)
    {
        _machine = facts.Machine;
        var count = (2 * _machine.Joints.Length) + (3 * _machine.Parts.Length)
            + _machine.Energies.Length + _machine.Fluids.Length + _machine.Controls.Length;
        _ranks = new int[count];
        Array.Fill(_ranks, NotReached);
        var clauses = new FreeingClauses(facts);
        var goals = FreeingClauses.Goals(_machine).ToList();
        var unmet = new Unmet?[count];
        var waiting = new List<FreeingGoal>?[count];
        foreach (var goal in goals)
        {
            unmet[NumberOf(goal)] = new Unmet(clauses.Of(goal));
        }

        // In rounds, so that the order of the declarations tells nothing: what is reached in one counts from the next on.
        var (open, next) = (goals, new List<FreeingGoal>());
        for (var round = 0; open.Count > 0; round++)
        {
            foreach (var goal in open)
            {
                var number = NumberOf(goal);
                if (!IsReached(goal) && Advance(goal, unmet[number]!, waiting, round, next))
                {
                    _ranks[number] = round;
                    next.AddRange(waiting[number] ?? []);
                }
            }

            (open, next) = (next, []);
        }

        Stuck = [.. goals.Where(goal => !IsReached(goal))];
        _stuckClauses = Stuck.ToDictionary(goal => goal, goal => unmet[NumberOf(goal)]!.Clauses);
        _stuckItems = [.. Stuck.Where(goal => goal.Kind is not (FreeingKind.Aside or FreeingKind.Slack)).Select(goal => goal.Item)];
    }

    /// <summary>The goals that nothing brings about, in the order of declaration.</summary>
    public ImmutableArray<FreeingGoal> Stuck { get; }

    /// <summary>Whether nothing ever meets a need, so that a finding on the machine says so already.</summary>
    public bool IsStuck(Need need) => need is AnyOf choice ? choice.Ways.All(IsStuck) : _stuckItems.Contains(need.Item) && need switch
    {
        PartOutOfTheWay or PartAside => !IsReached(new FreeingGoal(FreeingKind.Aside, need.Item)),
        _ => true,
    };

    /// <summary>
    /// In which round a goal can be brought about at the earliest: what brings it about has lower ones. Null where
    /// nothing does.
    /// </summary>
    public int? Rank(FreeingGoal goal) => _ranks[NumberOf(goal)] is not NotReached and var rank ? rank : null;

    /// <summary>What a stuck goal lacks.</summary>
    public IEnumerable<FreeingClause> Lacks(FreeingGoal goal) =>
        _stuckClauses[goal].Where(clause => !IsGiven(clause));

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
        var services = parts + (3 * _machine.Parts.Length);
        return goal switch
        {
            { Kind: FreeingKind.Off } => 2 * goal.Item.Index,
            { Kind: FreeingKind.Slack } => (2 * goal.Item.Index) + 1,
            { Kind: FreeingKind.Out } => parts + (3 * goal.Item.Index),
            { Kind: FreeingKind.Aside } => parts + (3 * goal.Item.Index) + 1,
            { Kind: FreeingKind.Fitted } => parts + (3 * goal.Item.Index) + 2,
            { Item: Energy } => services + goal.Item.Index,
            { Item: Fluid } => services + _machine.Energies.Length + goal.Item.Index,
            _ => services + _machine.Energies.Length + _machine.Fluids.Length + goal.Item.Index,
        };
    }

    /// <summary>Passes what a goal has already; where it still lacks something, the goal waits for all that would give it.</summary>
    private bool Advance(FreeingGoal goal, Unmet unmet, List<FreeingGoal>?[] waiting, int round, List<FreeingGoal> next)
    {
        while (unmet.Next < unmet.Clauses.Count && IsGivenBefore(unmet.Clauses[unmet.Next], round))
        {
            unmet.Next++;
        }

        if (unmet.Next == unmet.Clauses.Count)
        {
            return true;
        }

        if (IsGiven(unmet.Clauses[unmet.Next]))
        {
            // In this round, before its turn.
            next.Add(goal);
            return false;
        }

        foreach (var way in unmet.Clauses[unmet.Next].Ways)
        {
            (waiting[NumberOf(way)] ??= []).Add(goal);
        }

        return false;
    }

    private bool IsGivenBefore(FreeingClause clause, int round)
    {
        foreach (var way in clause.Ways)
        {
            if (_ranks[NumberOf(way)] is not NotReached and var rank && rank < round)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>What a goal needs that is not reached.</summary>
    private sealed class Unmet(List<FreeingClause> clauses)
    {
        /// <summary>All that it needs.</summary>
        public List<FreeingClause> Clauses => clauses;

        /// <summary>The place of the first that it may still lack.</summary>
        public int Next { get; set; }
    }
}
