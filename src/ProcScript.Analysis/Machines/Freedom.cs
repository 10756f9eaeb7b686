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
    private readonly Dictionary<FreeingGoal, int> _ranks = [];
    private readonly Dictionary<FreeingGoal, List<FreeingGoal>> _waiting = [];
    private readonly Dictionary<FreeingGoal, List<FreeingClause>> _clauses = [];
    private readonly Dictionary<FreeingGoal, int> _next = [];
    private readonly HashSet<MachineItem> _stuckItems;

    /// <summary>Works out what can be got off.</summary>
    public Freedom(MachineFacts facts)
    {
        var clauses = new FreeingClauses(facts);
        var goals = FreeingClauses.Goals(facts.Machine).ToList();
        var open = new Queue<FreeingGoal>(goals);
        foreach (var goal in goals)
        {
            _clauses[goal] = clauses.Of(goal);
        }

        while (open.TryDequeue(out var goal))
        {
            if (!IsReached(goal) && Advance(goal))
            {
                _ranks.Add(goal, _ranks.Count);
                _clauses.Remove(goal);
                if (_waiting.Remove(goal, out var waiting))
                {
                    waiting.ForEach(open.Enqueue);
                }
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
    public int? Rank(FreeingGoal goal) => _ranks.TryGetValue(goal, out var rank) ? rank : null;

    /// <summary>What a stuck goal lacks.</summary>
    public IEnumerable<FreeingClause> Lacks(FreeingGoal goal) =>
        _clauses[goal].Where(clause => !clause.Ways.Any(IsReached));

    private bool IsReached(FreeingGoal goal) => _ranks.ContainsKey(goal);

    /// <summary>Passes what a goal has already; where it still lacks something, the goal waits for all that would give it.</summary>
    private bool Advance(FreeingGoal goal)
    {
        var clauses = _clauses[goal];
        var next = _next.GetValueOrDefault(goal);
        while (next < clauses.Count && clauses[next].Ways.Any(IsReached))
        {
            next++;
        }

        _next[goal] = next;
        if (next == clauses.Count)
        {
            return true;
        }

        foreach (var way in clauses[next].Ways)
        {
            if (!_waiting.TryGetValue(way, out var waiting))
            {
                _waiting[way] = waiting = [];
            }

            waiting.Add(goal);
        }

        return false;
    }
}
