namespace ProcScript.Analysis.Crews;

/// <summary>
/// Hands out what several hold at once, such as a place with room for two, one after the other: who comes waits for those whose room he takes.
/// People who keep to that are never more than there is room for, however quick or slow somebody is. What two cannot hold at once is kept apart
/// elsewhere; what all hold at once needs nobody to wait.
/// </summary>
internal sealed class RoomChains
{
    private readonly CrewProblem _problem;
    private readonly CrewSchedule _schedule;
    private readonly Dictionary<int, int[]> _last = [];

    /// <summary>Begins with all of it free.</summary>
    public RoomChains(CrewProblem problem, CrewSchedule schedule)
    {
        (_problem, _schedule) = (problem, schedule);
        for (var resource = 0; resource < problem.Capacities.Length; resource++)
        {
            if (problem.Capacities[resource] is > 1 and var there && there < problem.People)
            {
                _last.Add(resource, [.. Enumerable.Repeat(-1, there)]);
            }
        }
    }

    /// <summary>The tasks that have to let go before one begins. Tasks come in the order of their starts.</summary>
    public HashSet<int> Enter(int task)
    {
        HashSet<int> leaving = [];
        foreach (var use in _problem.Tasks[task].Attended == 0 ? [] : _problem.Tasks[task].Uses)
        {
            if (!_last.TryGetValue(use.Resource, out var last))
            {
                continue;
            }

            // Room that nobody has had asks nobody to wait; else the longest free.
            var free = Enumerable.Range(0, last.Length)
                .Where(unit => last[unit] < 0 || Ends(last[unit]) <= _schedule.Starts[task])
                .OrderBy(unit => last[unit] < 0 ? -1 : Ends(last[unit]))
                .Take(use.Amount);
            foreach (var unit in free.ToList())
            {
                if (last[unit] >= 0)
                {
                    leaving.Add(last[unit]);
                }

                last[unit] = task;
            }
        }

        return leaving;
    }

    private long Ends(int task) => _schedule.Starts[task] + _problem.Tasks[task].Attended;
}
