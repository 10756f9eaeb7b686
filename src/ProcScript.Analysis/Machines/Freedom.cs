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
    private readonly Dictionary<FreeingGoal, int> _ranks;
    private readonly Dictionary<FreeingGoal, List<FreeingClause>> _stuckClauses;
    private readonly HashSet<MachineItem> _stuckItems;

    /// <summary>Works out what can be got off.</summary>
    public Freedom(MachineFacts facts)
    {
        var clauses = new FreeingClauses(facts);
        var goals = FreeingClauses.Goals(facts.Machine).ToList();
        var open = new Queue<FreeingGoal>(goals);
        var unmet = new Dictionary<FreeingGoal, Unmet>(goals.Count);
        var waiting = new Dictionary<FreeingGoal, List<FreeingGoal>>();
        _ranks = new Dictionary<FreeingGoal, int>(goals.Count);
        foreach (var goal in goals)
        {
            unmet[goal] = new Unmet(clauses.Of(goal));
        }

        while (open.TryDequeue(out var goal))
        {
            if (!IsReached(goal) && Advance(goal, unmet[goal], waiting))
            {
                _ranks.Add(goal, _ranks.Count);
                unmet.Remove(goal);
                if (waiting.Remove(goal, out var freed))
                {
                    freed.ForEach(open.Enqueue);
                }
            }
        }

        _stuckClauses = unmet.ToDictionary(one => one.Key, one => one.Value.Clauses);
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
    public int? Rank(FreeingGoal goal) => _ranks.TryGetValue(goal, out var rank) ? rank : null;

    /// <summary>What a stuck goal lacks.</summary>
    public IEnumerable<FreeingClause> Lacks(FreeingGoal goal) =>
        _stuckClauses[goal].Where(clause => !clause.Ways.Any(IsReached));

    private bool IsReached(FreeingGoal goal) => _ranks.ContainsKey(goal);

    /// <summary>Passes what a goal has already; where it still lacks something, the goal waits for all that would give it.</summary>
    private bool Advance(FreeingGoal goal, Unmet unmet, Dictionary<FreeingGoal, List<FreeingGoal>> waiting)
    {
        while (unmet.Next < unmet.Clauses.Count && unmet.Clauses[unmet.Next].Ways.Any(IsReached))
        {
            unmet.Next++;
        }

        if (unmet.Next == unmet.Clauses.Count)
        {
            return true;
        }

        foreach (var way in unmet.Clauses[unmet.Next].Ways)
        {
            if (!waiting.TryGetValue(way, out var others))
            {
                waiting[way] = others = [];
            }

            others.Add(goal);
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
