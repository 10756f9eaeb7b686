using Google.OrTools.Sat;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact;

/// <summary>
/// A crew's problem in the words of the solver. People who hold the same certificates are alike and only counted: whatever keeps to the counts at
/// every moment can be handed out among them. Times are in the largest unit that divides all of them, which leaves the solver fewer to tell apart.
/// </summary>
internal sealed class ScheduleModel
{
    private readonly CrewProblem _problem;
    private readonly IntVar[] _starts;
    private readonly IntervalVar[] _attended;
    private readonly int[][] _alike;
    private readonly IntVar[][]? _does;

    /// <summary>Writes the model, with a schedule that is known to begin from.</summary>
    public ScheduleModel(CrewProblem problem, CrewSchedule known)
    {
        _problem = problem;
        Unit = problem.Tasks.SelectMany(task => (long[])[task.Attended, task.Duration]).Aggregate(0L, Divisor) is > 0 and var unit ? unit : 1;
        var end = known.End(problem) / Unit;
        _starts = [.. problem.Tasks.Select((task, at) => Model.NewIntVar(0, end - (task.Duration / Unit), $"start {at}"))];
        _attended = [.. problem.Tasks.Select((task, at) => Model.NewFixedSizeIntervalVar(_starts[at], task.Attended / Unit, $"task {at}"))];
        var last = Model.NewIntVar((known.Least + Unit - 1) / Unit, end, "end");
        foreach (var lag in problem.Lags())
        {
            Model.Add(_starts[lag.Later] >= _starts[lag.Earlier] + (lag.Least / Unit));
        }

        for (var task = 0; task < _starts.Length; task++)
        {
            Model.Add(last >= _starts[task] + (problem.Tasks[task].Duration / Unit));
            Model.AddHint(_starts[task], known.Starts[task] / Unit);
        }

        AddHands();
        AddUses();
        _alike = Alike(problem);
        _does = problem.AsksWho ? People() : null;
        Model.Minimize(last);
    }

    /// <summary>The model.</summary>
    public CpModel Model { get; } = new();

    /// <summary>How many of the problem's units one of the model's is.</summary>
    public long Unit { get; }

    /// <summary>The schedule that the solver has found.</summary>
    public CrewSchedule Read(CpSolver solver)
    {
        long[] starts = [.. _starts.Select(start => solver.Value(start) * Unit)];
        return CrewSchedule.With(_problem, starts, _does is null ? null : Handed(starts, task => [.. _does[task].Select(count => (int)solver.Value(count))]));
    }

    private static long Divisor(long one, long other) => other == 0 ? one : Divisor(other, one % other);

    /// <summary>The people, those together who hold the same of what is asked for.</summary>
    private static int[][] Alike(CrewProblem problem)
    {
        var asked = problem.Tasks.SelectMany((_, task) => problem.Asked(task)).Distinct().Order().ToList();
        return [.. Enumerable.Range(0, problem.People).GroupBy(person => string.Join(',', asked.Where(one => problem.Holds(person, one)))).Select(same => same.ToArray())];
    }

    /// <summary>Hands the tasks out, one after the other, among those who are alike: somebody of them is free whenever the counts say so.</summary>
    private int[][] Handed(long[] starts, Func<int, int[]> counts)
    {
        var who = new int[starts.Length][];
        var freeFrom = new long[_problem.People];
        foreach (var task in Enumerable.Range(0, starts.Length).OrderBy(task => starts[task]).ThenBy(task => _problem.Tasks[task].Attended))
        {
            var attended = _problem.Tasks[task].Attended;
            who[task] =
            [
                .. _alike.Zip(counts(task), (people, count) => people.Where(person => attended == 0 || freeFrom[person] <= starts[task]).OrderByDescending(person => freeFrom[person]).Take(count))
                    .SelectMany(some => some),
            ];
            foreach (var person in attended == 0 ? [] : who[task])
            {
                freeFrom[person] = starts[task] + attended;
            }
        }

        return who;
    }

    private void AddHands()
    {
        var hands = Model.AddCumulative(_problem.People);
        for (var task = 0; task < _starts.Length; task++)
        {
            if (_problem.HandsOf(task) > 0 && _problem.Tasks[task].Attended > 0)
            {
                hands.AddDemand(_attended[task], _problem.HandsOf(task));
            }
        }
    }

    private void AddUses()
    {
        for (var resource = 0; resource < _problem.Capacities.Length; resource++)
        {
            var there = Model.AddCumulative(_problem.Capacities[resource]);
            for (var task = 0; task < _starts.Length; task++)
            {
                foreach (var use in _problem.Tasks[task].Uses.Where(use => use.Resource == resource))
                {
                    if (_problem.Tasks[task].Attended > 0)
                    {
                        there.AddDemand(_attended[task], use.Amount);
                    }
                }
            }
        }
    }

    /// <summary>How many of each sort of people do what, where that matters: never more than there are, and holders of what a task asks for among them.</summary>
    private IntVar[][] People()
    {
        var does = new IntVar[_starts.Length][];
        var busy = _alike.Select(people => Model.AddCumulative(people.Length)).ToArray();
        for (var task = 0; task < does.Length; task++)
        {
            var hands = _problem.HandsOf(task);
            does[task] = [.. _alike.Select((people, sort) => Model.NewIntVar(0, Math.Min(hands, people.Length), $"task {task} by {sort}"))];
            Model.Add(LinearExpr.Sum(does[task]) == hands);
            foreach (var certificate in _problem.Asked(task))
            {
                Model.Add(LinearExpr.Sum(does[task].Where((_, sort) => _problem.Holds(_alike[sort][0], certificate))) >= 1);
            }

            for (var sort = 0; _problem.Tasks[task].Attended > 0 && hands > 0 && sort < busy.Length; sort++)
            {
                busy[sort].AddDemand(_attended[task], does[task][sort]);
            }
        }

        return does;
    }
}
