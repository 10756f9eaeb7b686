using System.Collections.Immutable;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// Puts tasks into a schedule one after the other in the order of a list, each as early as it then goes: the serial schedule generation scheme
/// (J. E. Kelley, 1963). One of the lists makes a shortest schedule.
/// </summary>
internal sealed class SerialSchedule
{
    private readonly CrewProblem _problem;
    private readonly CrewNetwork _network;
    private readonly UseProfile _hands = new();
    private readonly UseProfile[] _uses;
    private readonly UseProfile[]? _people;
    private readonly int[][] _who;
    private readonly ImmutableArray<int>[] _asked;
    private readonly int[] _leastHolding;

    /// <summary>Prepares for a problem, seen from its beginning or in the mirror.</summary>
    public SerialSchedule(CrewProblem problem, CrewNetwork network)
    {
        _problem = problem;
        _network = network;
        _uses = [.. problem.Capacities.Select(_ => new UseProfile())];
        // Where it does not matter who does what, people are counted, and told apart once all is planned.
        _people = problem.AsksWho ? [.. Enumerable.Range(0, problem.People).Select(_ => new UseProfile())] : null;
        _who = new int[problem.Tasks.Length][];
        _asked = _people is null ? [] : [.. problem.Tasks.Select((_, task) => problem.Asked(task))];
        // Those who hold certificates are kept for what asks for them.
        _leastHolding = _people is null ? [] : [.. Enumerable.Range(0, problem.People).OrderBy(problem.HeldBy).ThenByDescending(person => person)];
        Starts = new long[problem.Tasks.Length];
    }

    /// <summary>The starts of the schedule that was made last.</summary>
    public long[] Starts { get; }

    /// <summary>The people of each task; null where they are only counted.</summary>
    public int[][]? Who => _people is null ? null : _who;

    /// <summary>Makes a schedule.</summary>
    /// <param name="list">The tasks, each behind those that it waits for.</param>
    public void Make(ReadOnlySpan<int> list)
    {
        _hands.Clear();
        foreach (var profile in _uses.AsSpan())
        {
            profile.Clear();
        }

        foreach (var person in _people ?? [])
        {
            person.Clear();
        }

        foreach (var task in list)
        {
            var from = _network.Releases[task];
            foreach (var (earlier, least) in _network.Before[task])
            {
                from = Math.Max(from, Starts[earlier] + least);
            }

            Starts[task] = Place(task, from);
        }
    }

    private long Place(int task, long from)
    {
        var (one, hands) = (_problem.Tasks[task], _problem.HandsOf(task));
        if (one.Attended == 0)
        {
            _who[task] = _people is null ? [.. Enumerable.Range(0, hands)] : Able(task, _leastHolding, hands)!;
            return from;
        }

        var start = from;
        for (var found = false; !found;)
        {
            found = true;
            var later = hands == 0 ? start : _people is null
                ? _hands.Earliest(start, one.Attended, _problem.People - hands)
                : WithPeople(task, start, hands);
            foreach (var use in one.Uses)
            {
                later = Math.Max(later, _uses[use.Resource].Earliest(later, one.Attended, _problem.Capacities[use.Resource] - use.Amount));
            }

            if (later > start)
            {
                (start, found) = (later, false);
            }
        }

        Take(task, start, hands);
        return start;
    }

    /// <summary>So many of some people, among them holders of what a task asks for; null where they do not hold all of it.</summary>
    private int[]? Able(int task, IReadOnlyCollection<int> people, int hands) =>
        _problem.Cover(people, _asked[task], hands) is { } able ? [.. able, .. people.Except(able).Take(hands - able.Count)] : null;

    private void Take(int task, long start, int hands)
    {
        var one = _problem.Tasks[task];
        foreach (var use in one.Uses)
        {
            _uses[use.Resource].Add(start, one.Attended, use.Amount);
        }

        if (hands > 0 && _people is null)
        {
            _hands.Add(start, one.Attended, hands);
        }
        else if (hands > 0)
        {
            foreach (var person in _who[task])
            {
                _people![person].Add(start, one.Attended, 1);
            }
        }
    }

    /// <summary>The earliest start from a moment on at which enough people are free, among them holders of what certificates are asked for.</summary>
    private long WithPeople(int task, long from, int hands)
    {
        var one = _problem.Tasks[task];
        for (var start = from; ; start = _people!.Min(person => person.NextAfter(start)))
        {
            var free = _leastHolding.Where(person => _people![person].IsFree(start, one.Attended)).ToList();
            if (free.Count >= hands && Able(task, free, hands) is { } able)
            {
                _who[task] = able;
                return start;
            }
        }
    }
}
