using System.Collections.Immutable;

namespace ProcScript.Analysis.Totals;

/// <summary>
/// Graham's list rule: whenever somebody is free, the first task of the list starts whose predecessors are done and that the
/// people who are free can do. It is quick and never leaves a whole crew idle, and it is known to get slower now and then
/// with more people (R. L. Graham, 1969): who reports its outcome keeps the better plan, as <see cref="CrewTime"/> does.
/// </summary>
internal static class ListSchedule
{
    /// <summary>
    /// The time until all tasks have ended. <paramref name="rank"/> gives each task's place in the list; a task that takes
    /// more people than there are takes all of them. The predecessors must have no cycle.
    /// </summary>
    public static double Makespan(ImmutableArray<CrewTask> tasks, int crew, ReadOnlySpan<int> rank)
    {
        var run = new Run(tasks, crew);
        var end = 0.0;
        for (var task = 0; task < tasks.Length; task++)
        {
            run.ReadyIfNothingIsMissing(task, rank);
        }

        while (true)
        {
            while (run.Start(out var started))
            {
                end = Math.Max(end, started);
            }

            if (!run.Next(rank))
            {
                return end;
            }
        }
    }

    private sealed class Run
    {
        private readonly ImmutableArray<CrewTask> _tasks;
        private readonly int[] _missing;
        private readonly List<int>[] _onEffect;
        private readonly List<int>[] _onHands;
        private readonly PriorityQueue<int, int>[] _readyByHands;
        private readonly PriorityQueue<(int Task, bool Effect), (double Time, int Order)> _events = new();
        private readonly int _crew;
        private double _now;
        private int _free;
        private int _order;

        public Run(ImmutableArray<CrewTask> tasks, int crew)
        {
            _tasks = tasks;
            _crew = crew;
            _free = crew;
            _missing = new int[tasks.Length];
            _onEffect = Lists(tasks.Length);
            _onHands = Lists(tasks.Length);
            _readyByHands = new PriorityQueue<int, int>[crew + 1];
            for (var hands = 0; hands <= crew; hands++)
            {
                _readyByHands[hands] = new PriorityQueue<int, int>();
            }

            for (var task = 0; task < tasks.Length; task++)
            {
                _missing[task] = tasks[task].After.Length + tasks[task].AfterHandsOf.Length;
                foreach (var before in tasks[task].After)
                {
                    _onEffect[before].Add(task);
                }

                foreach (var before in tasks[task].AfterHandsOf)
                {
                    _onHands[before].Add(task);
                }
            }
        }

        public void ReadyIfNothingIsMissing(int task, ReadOnlySpan<int> rank)
        {
            if (_missing[task] == 0)
            {
                _readyByHands[HandsOf(task)].Enqueue(task, rank[task]);
            }
        }

        /// <summary>Starts the first task of the list that can start now.</summary>
        public bool Start(out double end)
        {
            PriorityQueue<int, int>? first = null;
            var best = int.MaxValue;
            for (var hands = 0; hands <= _free; hands++)
            {
                if (_readyByHands[hands].TryPeek(out _, out var rank) && rank < best)
                {
                    best = rank;
                    first = _readyByHands[hands];
                }
            }

            if (first is null)
            {
                end = 0;
                return false;
            }

            var task = first.Dequeue();
            _free -= HandsOf(task);
            end = _now + _tasks[task].Duration;
            _events.Enqueue((task, false), (_now + _tasks[task].Attended, _order++));
            _events.Enqueue((task, true), (end, _order++));
            return true;
        }

        /// <summary>Goes on to the next moment at which something ends.</summary>
        public bool Next(ReadOnlySpan<int> rank)
        {
            if (!_events.TryPeek(out _, out var at))
            {
                return false;
            }

            _now = at.Time;
            while (_events.TryPeek(out var ended, out at) && at.Time <= _now)
            {
                _events.Dequeue();
                _free += ended.Effect ? 0 : HandsOf(ended.Task);
                foreach (var next in ended.Effect ? _onEffect[ended.Task] : _onHands[ended.Task])
                {
                    _missing[next]--;
                    ReadyIfNothingIsMissing(next, rank);
                }
            }

            return true;
        }

        private int HandsOf(int task) => Math.Min(_tasks[task].Hands, _crew);

        private static List<int>[] Lists(int count)
        {
            var lists = new List<int>[count];
            for (var i = 0; i < count; i++)
            {
                lists[i] = [];
            }

            return lists;
        }
    }
}
