namespace ProcScript.Analysis.Reaching.Search;

/// <summary>
/// What is left of a closure costs at the least, by cuts: over and over, a set of nodes is found of which every closure has one, the least that one of
/// them costs is charged, and taken off what all of them cost. That is the landmark-cut bound of planning without deletes (Helmert and Domshlak,
/// "Landmarks, Critical Paths and Abstractions", ICAPS 2009), from memory. Where nothing is needed for two things at once, it is exact.
/// </summary>
/// <param name="problem">The problem.</param>
internal sealed class LandmarkBound(ClosureProblem problem)
{
    private const double Least = 1e-9;

    private readonly int[] _number = new int[problem.Count];
    private readonly List<int> _nodes = [];

    /// <summary>How many clauses were looked at by the last question.</summary>
    public long Work { get; private set; }

    /// <summary>What it costs at the least to serve the open clauses of what is taken; infinite where it cannot be.</summary>
    /// <param name="state">Of each node 1 where it is taken, -1 where it must not be.</param>
    /// <param name="taken">The nodes that are taken.</param>
    /// <param name="enough">A cost from which on nobody cares.</param>
    /// <param name="most">How many clauses may be looked at; what has been charged until then is a bound too.</param>
    public double Of(sbyte[] state, List<int> taken, double enough, long most)
    {
        Work = 0;
        var cuts = Gather(state, taken);
        var bound = 0.0;
        while (bound < enough && Work < most)
        {
            var before = cuts.Work;
            var charged = cuts.Charge();
            Work += cuts.Work - before;
            if (charged is 0 or double.PositiveInfinity)
            {
                return bound + charged;
            }

            bound += charged;
        }

        return bound;
    }

    /// <summary>Gathers what is undecided and may serve an open clause.</summary>
    private Cuts Gather(sbyte[] state, List<int> taken)
    {
        _nodes.Clear();
        var goal = new List<int[]>();
        foreach (var node in taken)
        {
            AddOpen(problem.Clauses[node], goal, state);
        }

        var clauses = new List<List<int[]>>();
        for (var place = 0; place < _nodes.Count; place++)
        {
            var own = new List<int[]>();
            AddOpen(problem.Clauses[_nodes[place]], own, state);
            clauses.Add(own);
        }

        var costs = _nodes.Select(node => problem.Costs[node]).ToArray();
        foreach (var node in _nodes)
        {
            _number[node] = 0;
        }

        return Merged(goal, clauses, costs);
    }

    private void AddOpen(int[][] clauses, List<int[]> to, sbyte[] state)
    {
        foreach (var clause in clauses)
        {
            Work++;
            if (Array.Exists(clause, way => state[way] > 0))
            {
                continue;
            }

            to.Add([.. clause.Where(way => state[way] == 0).Select(Number)]);
        }
    }

    private int Number(int node)
    {
        if (_number[node] == 0)
        {
            _nodes.Add(node);
            _number[node] = _nodes.Count;
        }

        return _number[node] - 1;
    }

    /// <summary>What serves one node alone, which has no other way, becomes a part of that: so one cut charges for both.</summary>
    private static Cuts Merged(List<int[]> goal, List<List<int[]>> clauses, double[] costs)
    {
        var uses = new int[costs.Length];
        foreach (var way in goal.Concat(clauses.SelectMany(own => own)).SelectMany(clause => clause))
        {
            uses[way]++;
        }

        var isPart = new bool[costs.Length];
        for (var node = 0; node < costs.Length; node++)
        {
            var own = clauses[node];
            for (var place = 0; place < own.Count; place++)
            {
                if (own[place] is [var only] && uses[only] == 1 && only != node)
                {
                    own.AddRange(clauses[only]);
                    costs[node] += costs[only];
                    isPart[only] = true;
                    clauses[only] = [];
                    own.RemoveAt(place--);
                }
            }
        }

        var number = new int[costs.Length];
        var left = new List<int>();
        for (var node = 0; node < costs.Length; node++)
        {
            if (!isPart[node])
            {
                number[node] = left.Count;
                left.Add(node);
            }
        }

        // A part and all that holds it have the same things before them: what has become one says so once.
        List<int[]> Once(List<int[]> all) =>
            [.. all.Select(clause => clause.Select(way => number[way]).Order().ToArray()).DistinctBy(clause => clause, EqualWays)];
        return new Cuts(Once(goal), left.ConvertAll(node => Once(clauses[node])), [.. left.Select(node => costs[node])]);
    }

    private static readonly EqualityComparer<int[]> EqualWays = EqualityComparer<int[]>.Create(
        (one, other) => one.AsSpan().SequenceEqual(other), clause => clause.Aggregate(clause.Length, HashCode.Combine));

    /// <summary>
    /// The cuts of one question. What is charged makes some nodes cheaper and none dearer, so after a cut only what was reached through these is
    /// looked at again: a cut is near what is wanted, and little lies beyond it.
    /// </summary>
    private sealed class Cuts
    {
        /// <summary>Of each clause its owner; -1 for what is wanted.</summary>
        private readonly List<int> _owner = [];
        private readonly List<int[]> _clauses = [];
        private readonly int[][] _serves;
        private readonly int[][] _own;
        private readonly double[] _costs;
        private readonly double[] _reached;
        private readonly double[] _value;
        private readonly int[] _dearest;
        private readonly int[] _zoneOf;
        private readonly int[] _cutOf;
        private readonly PriorityQueue<int, double> _queue = new();
        private readonly int _wanted;
        private int _turn;

        public Cuts(List<int[]> goal, List<List<int[]>> clauses, double[] costs)
        {
            _costs = costs;
            var serves = new List<int>?[costs.Length];
            _wanted = goal.Count;
            goal.ForEach(clause => Add(-1, clause));
            _own = new int[costs.Length][];
            for (var node = 0; node < costs.Length; node++)
            {
                _own[node] = [.. Enumerable.Range(_clauses.Count, clauses[node].Count)];
                foreach (var clause in clauses[node])
                {
                    Add(node, clause);
                }
            }

            _serves = [.. serves.Select(all => all?.ToArray() ?? [])];
            (_reached, _dearest, _cutOf) = (new double[costs.Length], new int[costs.Length], new int[costs.Length]);
            (_value, _zoneOf) = (new double[_clauses.Count], new int[_clauses.Count]);
            Reach();

            void Add(int owner, int[] clause)
            {
                foreach (var way in clause)
                {
                    (serves[way] ??= []).Add(_clauses.Count);
                }

                _owner.Add(owner);
                _clauses.Add(clause);
            }
        }

        /// <summary>How many clauses have been looked at.</summary>
        public long Work { get; private set; }

        /// <summary>Charges one cut: 0 where nothing is left to charge, infinite where something that is wanted is out of reach.</summary>
        public double Charge()
        {
            Work += _wanted;
            var dearest = -1;
            for (var clause = 0; clause < _wanted; clause++)
            {
                if (_value[clause] == double.PositiveInfinity)
                {
                    return double.PositiveInfinity;
                }

                dearest = dearest < 0 || _value[clause] > _value[dearest] ? clause : dearest;
            }

            return dearest < 0 || _value[dearest] <= Least ? 0 : Cut(dearest);
        }

        /// <summary>What each node costs at the least by its dearest clause alone, and that by its cheapest way.</summary>
        private void Reach()
        {
            Array.Fill(_reached, double.PositiveInfinity);
            Array.Fill(_value, double.PositiveInfinity);
            Array.Fill(_dearest, -1);
            for (var node = 0; node < _costs.Length; node++)
            {
                if (_own[node].Length == 0)
                {
                    _queue.Enqueue(node, _reached[node] = _costs[node]);
                }
            }

            Spread();
        }

        /// <summary>Carries on what has become cheaper, until nothing else does.</summary>
        private void Spread()
        {
            while (_queue.TryDequeue(out var node, out var cost))
            {
                if (cost > _reached[node])
                {
                    continue;
                }

                foreach (var clause in _serves[node])
                {
                    Work++;
                    if (cost >= _value[clause])
                    {
                        continue;
                    }

                    _value[clause] = cost;
                    var owner = _owner[clause];
                    if (owner >= 0 && (_dearest[owner] < 0 || _dearest[owner] == clause))
                    {
                        Reach(owner);
                    }
                }
            }
        }

        private void Reach(int node)
        {
            var dearest = -1;
            foreach (var clause in _own[node])
            {
                Work++;
                dearest = dearest < 0 || _value[clause] > _value[dearest] ? clause : dearest;
            }

            if (_value[dearest] == double.PositiveInfinity)
            {
                return;
            }

            _dearest[node] = dearest;
            if (_value[dearest] + _costs[node] is var cost && cost < _reached[node])
            {
                _queue.Enqueue(node, _reached[node] = cost);
            }
        }

        /// <summary>Of the nodes through which the dearest of what is wanted comes to cost anything, one is in every closure.</summary>
        private double Cut(int first)
        {
            _turn++;
            var zone = new List<int> { first };
            _zoneOf[first] = _turn;
            for (var place = 0; place < zone.Count; place++)
            {
                foreach (var way in _clauses[zone[place]])
                {
                    Work++;
                    if (_costs[way] <= Least && _dearest[way] is >= 0 and var before && _zoneOf[before] != _turn)
                    {
                        _zoneOf[before] = _turn;
                        zone.Add(before);
                    }
                }
            }

            var cut = new List<int>();
            var least = double.PositiveInfinity;
            foreach (var clause in zone)
            {
                foreach (var way in _clauses[clause])
                {
                    if (_cutOf[way] != _turn && _costs[way] > Least && _reached[way] < double.PositiveInfinity && (_dearest[way] < 0 || _zoneOf[_dearest[way]] != _turn))
                    {
                        _cutOf[way] = _turn;
                        cut.Add(way);
                        least = Math.Min(least, _costs[way]);
                    }
                }
            }

            if (cut.Count == 0)
            {
                return 0;
            }

            foreach (var way in cut)
            {
                _costs[way] -= least;
                var cost = _costs[way] + (_dearest[way] < 0 ? 0 : _value[_dearest[way]]);
                _queue.Enqueue(way, _reached[way] = cost);
            }

            Spread();
            return least;
        }
    }
}
