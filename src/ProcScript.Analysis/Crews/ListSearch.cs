namespace ProcScript.Analysis.Crews;

/// <summary>One search for a short schedule, with a fixed number of people.</summary>
internal sealed class ListSearch
{
    // Of the changes that are tried, so many begin anew from the longest ways instead of from the best list so far.
    private const int RestartEvery = 12;

    private readonly CrewProblem _problem;
    private readonly CrewNetwork _network;
    private readonly CrewNetwork _mirror;
    private readonly SerialSchedule _forward;
    private readonly SerialSchedule _backward;
    private readonly long _least;
    private readonly long[] _tails;
    private int _left;
    private ulong _state = 0x9E3779B97F4A7C15;
    private int[] _list = [];
    private long _listEnd = long.MaxValue;

    /// <summary>Prepares a search that makes so many schedules.</summary>
    public ListSearch(CrewProblem problem, int schedules)
    {
        _problem = problem;
        _network = CrewNetwork.Forward(problem);
        _forward = new SerialSchedule(problem, _network);
        _mirror = CrewNetwork.Mirrored(problem);
        _backward = new SerialSchedule(problem, _mirror);
        _least = CrewBounds.Least(problem);
        _tails = CrewBounds.Tails(problem);
        _left = schedules;
    }

    /// <summary>The end of the best schedule.</summary>
    public long End { get; private set; } = long.MaxValue;

    /// <summary>The starts of the best schedule.</summary>
    public long[] Starts { get; private set; } = [];

    /// <summary>Its people; null where they are only counted.</summary>
    public int[][]? Who { get; private set; }

    private bool IsDone => _left <= 0 || End <= _least;

    /// <summary>Searches.</summary>
    /// <param name="known">The starts of a schedule for fewer people; null where there is none.</param>
    public void Run(long[]? known)
    {
        var inOrder = Enumerable.Range(0, _problem.Tasks.Length).Select(task => (long)task).ToArray();
        Try(_network.Sorted(inOrder));
        if (known is not null)
        {
            Try(_network.Sorted(known));
        }

        Try(_network.Sorted([.. _tails.Select(tail => -tail)]));
        foreach (var rank in (long[][])[inOrder, [.. _tails.Select(tail => -tail)]])
        {
            Try(_network.Sorted(ListRule.Starts(_problem, rank)));
        }

        for (var round = 1; !IsDone; round++)
        {
            Try(round % RestartEvery == 0 ? Sampled() : Changed());
        }

        Calm();
    }

    /// <summary>
    /// Puts task after task back to where the problem has it, wherever that costs nothing: people find their way more easily in what looks like the cards.
    /// </summary>
    private void Calm()
    {
        var list = _network.Sorted(Starts).ToList();
        _forward.Make([.. list]);
        if (_forward.Starts.Select((start, task) => start + _problem.Tasks[task].Duration).DefaultIfEmpty(0).Max() > End)
        {
            return;
        }

        for (var task = 0; task < list.Count; task++)
        {
            var changed = list.ToList();
            changed.Remove(task);
            changed.Insert(changed.FindLastIndex(before => before < task) + 1, task);
            if (Array.TrueForAll(_network.After[task].ToArray(), next => changed.IndexOf(next) > changed.IndexOf(task)) && IsNoLater(changed))
            {
                list = changed;
            }
        }
    }

    private bool IsNoLater(List<int> list)
    {
        var end = End;
        _forward.Make([.. list]);
        if (_forward.Starts.Select((start, task) => start + _problem.Tasks[task].Duration).Max() > end)
        {
            return false;
        }

        (Starts, Who) = ([.. _forward.Starts], _forward.Who is { } who ? [.. who] : null);
        return true;
    }

    /// <summary>Makes the schedule of a list, pushes it to the end and back, and takes note of it where it is no worse than the list before.</summary>
    private void Try(int[] list)
    {
        if (IsDone)
        {
            return;
        }

        _forward.Make(list);
        var end = Note();
        for (var before = long.MaxValue; end < before && !IsDone;)
        {
            before = end;
            _backward.Make(_mirror.Sorted(MinusFrees(_forward)));
            _forward.Make(_network.Sorted(MinusFrees(_backward)));
            end = Math.Min(end, Note());
        }

        if (end <= _listEnd)
        {
            (_list, _listEnd) = (_network.Sorted(_forward.Starts), end);
        }
    }

    /// <summary>When tasks let go of their people, the last first: the order in which they start in the mirror.</summary>
    private long[] MinusFrees(SerialSchedule schedule) => [.. schedule.Starts.Select((start, task) => -(start + _problem.Tasks[task].Attended))];

    private long Note()
    {
        _left--;
        var end = 0L;
        for (var task = 0; task < _forward.Starts.Length; task++)
        {
            end = Math.Max(end, _forward.Starts[task] + _problem.Tasks[task].Duration);
        }

        if (end < End)
        {
            (End, Starts, Who) = (end, [.. _forward.Starts], _forward.Who is { } who ? [.. who] : null);
        }

        return end;
    }

    /// <summary>The best list with a few of its tasks elsewhere.</summary>
    private int[] Changed()
    {
        var rank = new long[_list.Length];
        for (var place = 0; place < _list.Length; place++)
        {
            rank[_list[place]] = 2L * place;
        }

        for (var moves = 1 + Draw(3); moves > 0; moves--)
        {
            rank[Draw(rank.Length)] = (2L * Draw(rank.Length)) - 1;
        }

        return _network.Sorted(rank);
    }

    /// <summary>A list by the longest ways to the end, each lengthened or shortened by chance.</summary>
    private int[] Sampled()
    {
        var rank = new long[_tails.Length];
        for (var task = 0; task < rank.Length; task++)
        {
            rank[task] = -(_tails[task] * (80 + Draw(41)) / 100);
        }

        return _network.Sorted(rank);
    }

    /// <summary>A number from 0 up to one below (S. Vigna's SplitMix64).</summary>
    private int Draw(int below)
    {
        _state += 0x9E3779B97F4A7C15;
        var mixed = (_state ^ (_state >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return (int)((mixed ^ (mixed >> 31)) % (ulong)below);
    }
}
