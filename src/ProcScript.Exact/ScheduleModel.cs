using Google.OrTools.Sat;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact;

/// <summary>A crew's problem in the words of the solver.</summary>
internal sealed class ScheduleModel
{
    private readonly CrewProblem _problem;
    private readonly IntVar[] _starts;
    private readonly IntervalVar[] _attended;
    private readonly BoolVar[][]? _does;

    /// <summary>Writes the model, with a schedule that is known to begin from.</summary>
    public ScheduleModel(CrewProblem problem, CrewSchedule known)
    {
        _problem = problem;
        var end = known.End(problem);
        _starts = [.. problem.Tasks.Select((task, at) => Model.NewIntVar(0, end - task.Duration, $"start {at}"))];
        _attended = [.. problem.Tasks.Select((task, at) => Model.NewFixedSizeIntervalVar(_starts[at], task.Attended, $"task {at}"))];
        var last = Model.NewIntVar(known.Least, end, "end");
        foreach (var lag in problem.Lags())
        {
            Model.Add(_starts[lag.Later] >= _starts[lag.Earlier] + lag.Least);
        }

        for (var task = 0; task < _starts.Length; task++)
        {
            Model.Add(last >= _starts[task] + problem.Tasks[task].Duration);
            Model.AddHint(_starts[task], known.Starts[task]);
        }

        AddHands();
        AddUses();
        _does = problem.AsksWho ? People() : null;
        Model.Minimize(last);
    }

    /// <summary>The model.</summary>
    public CpModel Model { get; } = new();

    /// <summary>The schedule that the solver has found.</summary>
    public CrewSchedule Read(CpSolver solver)
    {
        long[] starts = [.. _starts.Select(start => solver.Value(start))];
        var who = _does?.Select(people => Enumerable.Range(0, people.Length).Where(person => solver.BooleanValue(people[person])).ToArray()).ToArray();
        return CrewSchedule.With(_problem, starts, who);
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

    /// <summary>Who does what, where that matters: nobody does two things at once, and what asks for a certificate is done by somebody who has one.</summary>
    private BoolVar[][] People()
    {
        var does = new BoolVar[_starts.Length][];
        var busy = Enumerable.Range(0, _problem.People).Select(_ => new List<IntervalVar>()).ToArray();
        for (var task = 0; task < does.Length; task++)
        {
            var one = _problem.Tasks[task];
            does[task] = [.. busy.Select((_, person) => Model.NewBoolVar($"task {task} by {person}"))];
            Model.Add(LinearExpr.Sum(does[task]) == _problem.HandsOf(task));
            foreach (var certificate in _problem.Asked(task))
            {
                Model.AddBoolOr(does[task].Where((_, person) => _problem.Holds(person, certificate)));
            }

            for (var person = 0; one.Attended > 0 && person < busy.Length; person++)
            {
                busy[person].Add(Model.NewOptionalFixedSizeIntervalVar(_starts[task], one.Attended, does[task][person], $"task {task} holds {person}"));
            }
        }

        foreach (var person in busy)
        {
            Model.AddNoOverlap(person);
        }

        return does;
    }
}
