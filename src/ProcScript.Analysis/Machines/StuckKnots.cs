using System.Collections.Immutable;

namespace ProcScript.Analysis.Machines;

/// <summary>Goals that nothing brings about because each waits for another of them, or for nothing at all.</summary>
/// <param name="Goals">The goals, in the order of declaration.</param>
/// <param name="Lacks">What they lack.</param>
internal sealed record StuckKnot(ImmutableArray<FreeingGoal> Goals, ImmutableArray<FreeingLack> Lacks);

/// <summary>What a stuck goal lacks.</summary>
/// <param name="Goal">The goal.</param>
/// <param name="Clause">What it lacks.</param>
internal readonly record struct FreeingLack(FreeingGoal Goal, FreeingClause Clause);

/// <summary>
/// Finds the knots that are to blame for what is stuck: the strongly connected components of stuck goals that wait for no other
/// component. Whatever else is stuck, is so because of these.
/// </summary>
internal sealed class StuckKnots
{
    private readonly Dictionary<FreeingGoal, ImmutableArray<FreeingLack>> _lacks;
    private readonly Dictionary<FreeingGoal, int> _index = [];
    private readonly Dictionary<FreeingGoal, int> _low = [];
    private readonly Dictionary<FreeingGoal, int> _component = [];
    private readonly Stack<FreeingGoal> _path = [];
    private readonly List<List<FreeingGoal>> _components = [];

    private StuckKnots(Freedom freedom)
    {
        _lacks = freedom.Stuck.ToDictionary(
            goal => goal,
            goal => freedom.Lacks(goal).Select(clause => new FreeingLack(goal, clause)).ToImmutableArray());
        foreach (var goal in freedom.Stuck)
        {
            if (!_index.ContainsKey(goal))
            {
                Search(goal);
            }
        }
    }

    /// <summary>The knots, in the order of declaration.</summary>
    public static IEnumerable<StuckKnot> Of(Freedom freedom)
    {
        if (freedom.Stuck.IsEmpty)
        {
            return [];
        }

        var knots = new StuckKnots(freedom);
        var place = freedom.Stuck.Select((goal, i) => (goal, i)).ToDictionary(pair => pair.goal, pair => pair.i);
        return from component in knots._components
               where component.All(goal => knots.WaitsFor(goal).All(other => knots._component[other] == knots._component[goal]))
               let goals = component.OrderBy(goal => place[goal]).ToImmutableArray()
               orderby place[goals[0]]
               select new StuckKnot(goals, [.. goals.SelectMany(goal => knots._lacks[goal])]);
    }

    private IEnumerable<FreeingGoal> WaitsFor(FreeingGoal goal) =>
        _lacks[goal].SelectMany(lack => lack.Clause.Ways).Where(_lacks.ContainsKey);

    /// <summary>Tarjan's search from one goal, with a stack of its own so that no machine is too deep for it.</summary>
    private void Search(FreeingGoal start)
    {
        var open = new Stack<(FreeingGoal Goal, IEnumerator<FreeingGoal> Others)>();
        Enter(start, open);
        while (open.TryPeek(out var top))
        {
            if (top.Others.MoveNext())
            {
                var other = top.Others.Current;
                if (!_index.ContainsKey(other))
                {
                    Enter(other, open);
                }
                else if (!_component.ContainsKey(other))
                {
                    _low[top.Goal] = Math.Min(_low[top.Goal], _index[other]);
                }

                continue;
            }

            open.Pop();
            if (open.TryPeek(out var below))
            {
                _low[below.Goal] = Math.Min(_low[below.Goal], _low[top.Goal]);
            }

            if (_low[top.Goal] == _index[top.Goal])
            {
                Close(top.Goal);
            }
        }
    }

    private void Enter(FreeingGoal goal, Stack<(FreeingGoal Goal, IEnumerator<FreeingGoal> Others)> open)
    {
        _index[goal] = _low[goal] = _index.Count;
        _path.Push(goal);
        open.Push((goal, WaitsFor(goal).GetEnumerator()));
    }

    private void Close(FreeingGoal root)
    {
        var component = new List<FreeingGoal>();
        FreeingGoal goal;
        do
        {
            goal = _path.Pop();
            _component[goal] = _components.Count;
            component.Add(goal);
        }
        while (goal != root);
        _components.Add(component);
    }
}
