namespace ProcScript.Analysis.Reaching.Search;

/// <summary>
/// Finds the least-cost closure by branch and bound: what has no choice is taken at once, of what has one each way is tried, the cheapest first, and no
/// way is gone that cannot come out cheaper than the best so far. What a closure really costs, and whether it can be worked at all, is for the caller to
/// say.
/// </summary>
internal sealed class ClosureSearch
{
    private const sbyte In = 1;
    private const sbyte Out = -1;

    /// <summary>Costs are sums of figures in seconds; what differs by less is the same.</summary>
    private const double Least = 1e-6;

    private readonly ClosureProblem _problem;
    private readonly ForcedClosures _forced;
    private readonly LandmarkBound _landmarks;
    private readonly double[] _deep;
    private readonly Func<int[], JudgedClosure?> _judge;
    private readonly List<(int Node, int Clause)>[] _serves;
    private readonly List<int>[] _bringsAlong;
    private readonly sbyte[] _state;
    private readonly Stack<int> _trail = [];
    private readonly List<int> _taken = [];
    private readonly double[] _paid;
    private readonly int[] _paidIn;
    private readonly double[] _left;
    private readonly int[] _leftIn;
    private int _turn;
    private int _clauseTurn;
    private double _cost;
    private long _budget;
    private double _openBound = double.PositiveInfinity;
    private int _looked;
    private int _judged;

    private ClosureSearch(ClosureProblem problem, Func<int[], JudgedClosure?> judge, long budget)
    {
        _problem = problem;
        _judge = judge;
        _budget = budget;
        _forced = new ForcedClosures(problem, onlyBefore: false);
        _landmarks = new LandmarkBound(problem);
        _deep = DeepCosts.Of(problem);
        _state = new sbyte[problem.Count];
        (_paid, _paidIn, _left, _leftIn) = (new double[problem.Count], new int[problem.Count], new double[problem.Count], new int[problem.Count]);
        _serves = [.. Enumerable.Range(0, problem.Count).Select(_ => new List<(int Node, int Clause)>())];
        _bringsAlong = [.. Enumerable.Range(0, problem.Count).Select(_ => new List<int>())];
        for (var node = 0; node < problem.Count; node++)
        {
            for (var clause = 0; clause < problem.Clauses[node].Length; clause++)
            {
                foreach (var way in problem.Clauses[node][clause])
                {
                    _serves[way].Add((node, clause));
                }
            }

            foreach (var other in problem.Along[node])
            {
                _bringsAlong[other].Add(node);
            }
        }
    }

    /// <summary>The closure that <paramref name="judge"/> finds cheapest.</summary>
    /// <param name="problem">The problem, simplified.</param>
    /// <param name="without">Nodes that must not be in it.</param>
    /// <param name="judge">What a closure costs, at the least the sum of its nodes; null where it cannot be worked.</param>
    /// <param name="budget">How many clauses may be looked at before the search ends with what it has.</param>
    public static ClosureResult Solve(ClosureProblem problem, IEnumerable<int> without, Func<int[], JudgedClosure?> judge, long budget) =>
        new ClosureSearch(problem, judge, budget).Solve(without);

    private int[]? Best { get; set; }

    private double BestCost { get; set; } = double.PositiveInfinity;

    private ClosureResult Solve(IEnumerable<int> without)
    {
        if (without.All(node => Set(node, Out)) && _problem.Goals.All(goal => Set(goal, In)))
        {
            Explore();
        }

        return new ClosureResult(Best, BestCost, Math.Min(BestCost, _openBound), _looked);
    }

    private void Explore()
    {
        // Each frame is a choice that is half done: the node, how far the trail went before it, and the bound of what is left of it.
        var open = new Stack<(int Node, int Trail, double Bound)>();
        var before = Cut(double.PositiveInfinity);
        while (true)
        {
            _looked++;
            var (branch, bound) = (-1, Math.Max(before, Bound()));
            if (Best is not null && bound < BestCost - Least)
            {
                bound = Math.Max(bound, Cut(BestCost));
            }

            var isOpen = bound < BestCost - Least && !IsSpent(bound, open.Select(frame => frame.Bound)) && (branch = Branch()) >= 0;
            if (isOpen)
            {
                open.Push((branch, _trail.Count, bound));
                before = bound;
                if (Set(branch, In))
                {
                    continue;
                }
            }

            // Back to the last choice of which the other half can still be better.
            while (true)
            {
                if (!open.TryPop(out var frame))
                {
                    return;
                }

                Undo(frame.Trail);
                before = frame.Bound;
                if (frame.Bound < BestCost - Least && !IsSpent(frame.Bound, []) && Set(frame.Node, Out))
                {
                    break;
                }

                Undo(frame.Trail);
            }
        }
    }

    /// <summary>What any closure with what is taken costs at the least, by cuts.</summary>
    private double Cut(double enough)
    {
        if (_budget <= 0)
        {
            return _cost;
        }

        var bound = _cost + _landmarks.Of(_state, _taken, enough - _cost, _budget * CutsPrice / 2);
        _budget -= _landmarks.Work / CutsPrice;
        return bound;
    }

    /// <summary>Whether the budget is gone; what is left open then may be as cheap as its bound. Until there is any way at all it may be overdrawn.</summary>
    private bool IsSpent(double bound, IEnumerable<double> open)
    {
        if (_budget > (Best is null ? -FirstPrice : 0))
        {
            return false;
        }

        _openBound = Math.Min(_openBound, open.Append(bound).Min());
        return true;
    }

    /// <summary>The node to decide on; -1 where nothing is left to decide, and then the closure has been judged.</summary>
    private int Branch()
    {
        var (best, bestCost) = (-1, double.PositiveInfinity);
        foreach (var node in _taken)
        {
            foreach (var clause in _problem.Clauses[node])
            {
                if (!IsOpen(clause))
                {
                    continue;
                }

                foreach (var way in clause)
                {
                    if (_state[way] == 0 && Marginal(way) is var cost && (cost < bestCost || (cost == bestCost && way < best)))
                    {
                        (best, bestCost) = (way, cost);
                    }
                }
            }
        }

        return best >= 0 ? best : Close();
    }

    /// <summary>All clauses are served: judges the closure, unless what serves it goes round in a circle, which asks for one more way.</summary>
    private int Close()
    {
        var rounds = _problem.Rounds(node => _state[node] == In);
        _budget -= _taken.Count;
        if (_taken.TrueForAll(node => rounds[node] >= 0))
        {
            _judged++;
            int[] closure = [.. _taken.Order()];
            _budget -= (long)closure.Length * JudgingPrice;
            if (_judge(closure) is not { } judged)
            {
                // More than this might do, and costs no less.
                _openBound = Math.Min(_openBound, _cost);
                return MostJudged > _judged ? Another(rounds, all: true) : -1;
            }

            if (judged.Least < judged.Cost - Least)
            {
                _openBound = Math.Min(_openBound, judged.Least);
            }

            if (judged.Cost < BestCost - Least)
            {
                (Best, BestCost) = (closure, judged.Cost);
            }

            return -1;
        }

        return Another(rounds, all: false);
    }

    /// <summary>How many clauses could be looked at while a node of a closure is performed there and back.</summary>
    private const int JudgingPrice = 300;

    /// <summary>How many clauses the cuts look at while one is looked at here.</summary>
    private const int CutsPrice = 10;

    /// <summary>How many clauses more may be looked at for the first way.</summary>
    private const long FirstPrice = 5_000_000;

    /// <summary>How many closures that cannot be worked are made larger, and how many are judged.</summary>
    private const int MostJudged = 200;

    /// <summary>The cheapest way that is undecided, of a clause of what goes round in a circle.</summary>
    private int Another(int[] rounds, bool all)
    {
        var (best, bestCost) = (-1, double.PositiveInfinity);
        foreach (var node in _taken)
        {
            if (all || rounds[node] < 0)
            {
                foreach (var way in _problem.Clauses[node].SelectMany(clause => clause))
                {
                    if (_state[way] == 0 && Marginal(way) is var cost && cost < bestCost)
                    {
                        (best, bestCost) = (way, cost);
                    }
                }
            }
        }

        return best;
    }

    private double Marginal(int way)
    {
        var sum = 0.0;
        foreach (var node in _forced.Of(way))
        {
            sum += _state[node] == In ? 0 : _problem.Costs[node];
        }

        return sum + _deep[way];
    }

    /// <summary>
    /// What any closure with what is taken costs at the least: each clause that is still open takes from what its ways bring along as much as the
    /// cheapest of them has left, so that nothing is counted twice.
    /// </summary>
    private double Bound()
    {
        _turn++;
        var bound = _cost;
        foreach (var node in _taken)
        {
            foreach (var clause in _problem.Clauses[node])
            {
                _budget--;
                if (clause.Length > 1 && IsOpen(clause))
                {
                    bound += Take(clause);
                }
            }
        }

        return bound;
    }

    private double Take(int[] clause)
    {
        var least = double.PositiveInfinity;
        foreach (var way in clause)
        {
            if (_state[way] == 0)
            {
                least = Math.Min(least, _forced.Of(way).Sum(Left));
                _budget -= _forced.Of(way).Length / 4;
            }
        }

        if (least is 0 or double.PositiveInfinity)
        {
            return 0;
        }

        _clauseTurn++;
        foreach (var way in clause)
        {
            if (_state[way] != 0)
            {
                continue;
            }

            // What another way of this clause has paid already is paid for this one too.
            var due = least - _forced.Of(way).Sum(node => _paidIn[node] == _clauseTurn ? _paid[node] : 0);
            foreach (var node in _forced.Of(way))
            {
                if (due <= 0)
                {
                    break;
                }

                var pays = Math.Min(due, Left(node));
                if (pays > 0)
                {
                    (_left[node], _leftIn[node]) = (Left(node) - pays, _turn);
                    (_paid[node], _paidIn[node]) = ((_paidIn[node] == _clauseTurn ? _paid[node] : 0) + pays, _clauseTurn);
                    due -= pays;
                }
            }
        }

        return least;
    }

    private double Left(int node) => _state[node] == In ? 0 : _leftIn[node] == _turn ? _left[node] : _problem.Costs[node];

    /// <summary>Whether none of the ways of a clause is taken.</summary>
    private bool IsOpen(int[] clause)
    {
        foreach (var way in clause)
        {
            if (_state[way] == In)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Decides on a node, and on all that follows from it. False where that contradicts what is decided.</summary>
    private bool Set(int first, sbyte value)
    {
        var open = new Stack<(int Node, sbyte Value)>([(first, value)]);
        while (open.TryPop(out var next))
        {
            if (_state[next.Node] != 0)
            {
                if (_state[next.Node] != next.Value)
                {
                    return false;
                }

                continue;
            }

            _state[next.Node] = next.Value;
            _trail.Push(next.Node);
            if (next.Value == In)
            {
                _cost += _problem.Costs[next.Node];
                _taken.Add(next.Node);
                foreach (var other in _problem.Along[next.Node])
                {
                    open.Push((other, In));
                }

                foreach (var clause in _problem.Clauses[next.Node])
                {
                    if (!Follow(clause, open))
                    {
                        return false;
                    }
                }
            }
            else
            {
                foreach (var other in _bringsAlong[next.Node])
                {
                    open.Push((other, Out));
                }

                foreach (var (node, clause) in _serves[next.Node])
                {
                    if (_state[node] == In ? !Follow(_problem.Clauses[node][clause], open) : _state[node] == 0 && IsHopeless(_problem.Clauses[node][clause]))
                    {
                        if (_state[node] == In)
                        {
                            return false;
                        }

                        open.Push((node, Out));
                    }
                }
            }
        }

        return true;
    }

    /// <summary>Takes the last way that a clause has left. False where it has none.</summary>
    private bool Follow(int[] clause, Stack<(int Node, sbyte Value)> open)
    {
        _budget--;
        var only = -1;
        foreach (var way in clause)
        {
            if (_state[way] == In || (_state[way] == 0 && only >= 0))
            {
                return true;
            }

            only = _state[way] == 0 ? way : only;
        }

        if (only >= 0)
        {
            open.Push((only, In));
        }

        return only >= 0;
    }

    private bool IsHopeless(int[] clause)
    {
        foreach (var way in clause)
        {
            if (_state[way] != Out)
            {
                return false;
            }
        }

        return true;
    }

    private void Undo(int trail)
    {
        while (_trail.Count > trail)
        {
            var node = _trail.Pop();
            if (_state[node] == In)
            {
                _cost -= _problem.Costs[node];
                _taken.RemoveAt(_taken.Count - 1);
            }

            _state[node] = 0;
        }
    }
}

/// <summary>What a closure costs as it was judged.</summary>
/// <param name="Cost">What it costs.</param>
/// <param name="Least">What the same closure may cost at the least if it is gone about otherwise.</param>
internal readonly record struct JudgedClosure(double Cost, double Least)
{
    /// <summary>A cost that leaves nothing open.</summary>
    public static implicit operator JudgedClosure(double cost) => new(cost, cost);
}

/// <summary>What came of a search.</summary>
/// <param name="Closure">The nodes of the cheapest closure that can be worked, in ascending order; null where none was found.</param>
/// <param name="Cost">What it costs.</param>
/// <param name="Bound">What any closure costs at the least: as much as this one where it is proved to be the cheapest.</param>
/// <param name="Looked">How many choices were looked at.</param>
internal sealed record ClosureResult(int[]? Closure, double Cost, double Bound, int Looked);
