namespace ProcScript.Analysis.Crews;

/// <summary>
/// Graham's list rule: whenever somebody is free, the first task of the list starts that waits for nothing any more and that those who are free can
/// do. It is quick and never leaves a whole crew idle, and it is known to get slower now and then with more people, shorter tasks or less to wait
/// for (R. L. Graham, 1969): who reports its outcome keeps the better plan.
/// </summary>
internal static class ListRule
{
    /// <summary>The starts.</summary>
    /// <param name="problem">The problem; it must not matter who does what.</param>
    /// <param name="rank">Of each task its place in the list.</param>
    public static long[] Starts(CrewProblem problem, ReadOnlySpan<long> rank)
    {
        var run = new Run(problem, rank.ToArray());
        while (run.Begin())
        {
        }

        return run.Starts;
    }

    private sealed class Run
    {
        private readonly CrewProblem _problem;
        private readonly CrewNetwork _network;
        private readonly UseProfile _hands = new();
        private readonly UseProfile[] _uses;
        private readonly int[] _missing;
        private readonly List<int> _ready = [];
        private readonly Comparer<int> _inOrder;
        private readonly PriorityQueue<int, (long From, int Task)> _waiting = new();
        private long _now;

        public Run(CrewProblem problem, long[] rank)
        {
            _inOrder = Comparer<int>.Create((one, other) => (rank[one], one).CompareTo((rank[other], other)));
            _problem = problem;
            _network = CrewNetwork.Forward(problem);
            _uses = [.. problem.Capacities.Select(_ => new UseProfile())];
            _missing = [.. _network.Before.Select(before => before.Count)];
            Starts = new long[problem.Tasks.Length];
            for (var task = 0; task < Starts.Length; task++)
            {
                WaitsNoMore(task);
            }
        }

        public long[] Starts { get; }

        /// <summary>Starts what can start now, and goes on to the next moment. False where nothing is left.</summary>
        public bool Begin()
        {
            while (_waiting.TryPeek(out var task, out var from) && from.From <= _now)
            {
                _waiting.Dequeue();
                var place = _ready.BinarySearch(task, _inOrder);
                _ready.Insert(~place, task);
            }

            var free = _problem.People - _hands.Used(_now);
            for (var at = 0; at < _ready.Count; at++)
            {
                if (Fits(_ready[at], free))
                {
                    var task = _ready[at];
                    _ready.RemoveAt(at);
                    Start(task);
                    return true;
                }
            }

            var next = _ready.Count == 0 ? long.MaxValue : _uses.Append(_hands).Min(profile => profile.NextAfter(_now));
            if (_waiting.TryPeek(out _, out var first))
            {
                next = Math.Min(next, first.From);
            }

            _now = next;
            return next < long.MaxValue;
        }

        private void Start(int task)
        {
            var one = _problem.Tasks[task];
            Starts[task] = _now;
            if (one.Attended > 0)
            {
                _hands.Add(_now, one.Attended, _problem.HandsOf(task));
                foreach (var use in one.Uses)
                {
                    _uses[use.Resource].Add(_now, one.Attended, use.Amount);
                }
            }

            foreach (var next in _network.After[task])
            {
                _missing[next]--;
                WaitsNoMore(next);
            }
        }

        private bool Fits(int task, int free)
        {
            var one = _problem.Tasks[task];
            return one.Attended == 0
                || (_problem.HandsOf(task) <= free
                    && _hands.Earliest(_now, one.Attended, _problem.People - _problem.HandsOf(task)) == _now
                    && one.Uses.All(use => _uses[use.Resource].Earliest(_now, one.Attended, _problem.Capacities[use.Resource] - use.Amount) == _now));
        }

        private void WaitsNoMore(int task)
        {
            if (_missing[task] == 0)
            {
                _waiting.Enqueue(task, (_network.Before[task].Select(before => Starts[before.Task] + before.Least).Append(0).Max(), task));
            }
        }
    }
}
