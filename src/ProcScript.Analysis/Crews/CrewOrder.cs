using System.Collections;
using System.Collections.Immutable;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// What a schedule is to people who carry no clock: everybody does his own in order, and before some of it waits until another has done a certain
/// step. It keeps all that the problem asks for, however quick or slow somebody is.
/// </summary>
internal sealed class CrewOrder
{
    private readonly CrewProblem _problem;
    private readonly CrewSchedule _schedule;
    private readonly int[] _order;
    private readonly BitArray[] _before;

    /// <summary>Reads the order out of a schedule.</summary>
    public CrewOrder(CrewProblem problem, CrewSchedule schedule)
    {
        (_problem, _schedule) = (problem, schedule);
        // What takes no time and no hands stands between what it waits for and what waits for it.
        _order = [.. Enumerable.Range(0, problem.Tasks.Length).OrderBy(task => schedule.Starts[task]).ThenBy(task => problem.Tasks[task].Attended > 0).ThenBy(task => task)];
        _order = Sorted();
        _before = new BitArray[problem.Tasks.Length];
        Waits = new ImmutableArray<int>[problem.Tasks.Length];
        Find();
    }

    /// <summary>Of each task those of others that its people have to wait for, of each person the last, where they have not waited for as much before.</summary>
    public ImmutableArray<int>[] Waits { get; }

    /// <summary>The tasks in an order in which one after the other could be begun.</summary>
    public IReadOnlyList<int> Tasks => _order;

    /// <summary>Whether one task is done before another, whatever happens.</summary>
    public bool IsBefore(int one, int other) => _before[other][one];

    /// <summary>The order of the starts, with every task behind those that it waits for.</summary>
    private int[] Sorted()
    {
        var rank = new long[_order.Length];
        for (var place = 0; place < _order.Length; place++)
        {
            rank[_order[place]] = place;
        }

        return CrewNetwork.Forward(_problem).Sorted(rank);
    }

    private void Find()
    {
        var lags = _problem.Lags().ToLookup(lag => lag.Later, lag => lag.Earlier);
        var last = Enumerable.Repeat(-1, _problem.People).ToArray();
        var rooms = new RoomChains(_problem, _schedule);
        for (var place = 0; place < _order.Length; place++)
        {
            var task = _order[place];
            var known = new BitArray(_order.Length);
            var leaving = rooms.Enter(task);
            foreach (var own in _schedule.People[task].Select(person => last[person]).Where(own => own >= 0))
            {
                Take(known, own);
            }

            var waits = new List<int>();
            // The latest first: who waits for it has waited for what comes before it.
            foreach (var earlier in _order.AsSpan(..place).ToArray().Reverse())
            {
                if (!known[earlier] && (lags[task].Contains(earlier) || leaving.Contains(earlier) || KeepsApart(earlier, task)))
                {
                    Take(known, earlier);
                    if (_problem.Tasks[earlier].Hands > 0 && _schedule.People[task].Length > 0)
                    {
                        waits.Add(earlier);
                    }
                    else if (_schedule.People[task].Length > 0)
                    {
                        // A mark in time is nobody's: who waits for it waits for all that it waits for.
                        waits.AddRange(Behind(earlier, lags));
                    }
                }
            }

            _before[task] = known;
            Waits[task] = [.. waits.Distinct().Where(wait => !_schedule.People[wait].All(person => _schedule.People[task].Contains(person)))
                .GroupBy(wait => _schedule.People[wait][0]).Select(one => one.MaxBy(wait => Array.IndexOf(_order, wait))).Order()];
            foreach (var person in _schedule.People[task])
            {
                last[person] = task;
            }
        }
    }

    /// <summary>What has hands and stands right before a mark in time.</summary>
    private IEnumerable<int> Behind(int mark, ILookup<int, int> lags) =>
        lags[mark].SelectMany(earlier => _problem.Tasks[earlier].Hands > 0 ? [earlier] : Behind(earlier, lags));

    private void Take(BitArray known, int task)
    {
        known.Or(_before[task]);
        known[task] = true;
    }

    /// <summary>Whether two tasks must not go on at once, whichever comes first.</summary>
    private bool KeepsApart(int one, int other)
    {
        var (mine, theirs) = (_problem.Tasks[one], _problem.Tasks[other]);
        return mine.Hands > 0 && theirs.Hands > 0
            && (mine.StandClear || theirs.StandClear || mine.Uses.Any(use => theirs.Uses.Any(also =>
                also.Resource == use.Resource && use.Amount + also.Amount > _problem.Capacities[use.Resource])));
    }
}
