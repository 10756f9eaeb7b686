using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Crews;

/// <summary>
/// A proven job as work for a crew. What the proof needs to come first comes first, and beyond that a crew keeps to the cards where working side by
/// side could hurt somebody or nobody can tell what an order means:
/// nobody starts the work before the strip is done, nor the refit before the work is, nor anything beyond a pause before it is over;
/// nothing that stands behind the making safe of an energy starts before that is done, and nothing goes on while one comes back or is live for a step;
/// nothing that stands behind the setting of a control on the way out starts before it is set, nor is one set back before all before it is done;
/// nobody works beside a load on a hoist, or beside what can fire, fall, fly off or burst;
/// what an author wrote as a text keeps its place, for nobody but he knows what it is about.
/// </summary>
internal sealed class CrewJob
{
    private readonly ImmutableArray<CrewTask>.Builder _tasks = ImmutableArray.CreateBuilder<CrewTask>();
    private readonly ImmutableArray<ImmutableArray<PlannedStep>>.Builder _steps = ImmutableArray.CreateBuilder<ImmutableArray<PlannedStep>>();
    private readonly Dictionary<int, int> _taskOf = [];
    private readonly ImmutableArray<PlannedStep> _all;
    private readonly IReadOnlyDictionary<int, PerformedAction> _actions;
    private readonly ILookup<int, OrderEdge> _before;
    private readonly HashSet<int> _gates = [];
    private readonly List<Certificate?> _certificates = [];
    private int _first;

    private CrewJob(ImmutableArray<PlannedStep> steps, StripRun strip, RefitRun refit)
    {
        _all = steps;
        _actions = strip.Actions.Concat(refit.Actions).ToDictionary(action => StepList.NumberOf(action.Number));
        _before = strip.Order.Concat(refit.Order).ToLookup(edge => StepList.NumberOf(edge.Later));
    }

    /// <summary>The work.</summary>
    public ImmutableArray<CrewTask> Tasks { get; private set; }

    /// <summary>The steps of each task, in their order; none where a task is a mark in time.</summary>
    public ImmutableArray<ImmutableArray<PlannedStep>> Steps { get; private set; }

    /// <summary>The certificates that tasks ask for; null for what the law asks for where an item is marked, and none is named.</summary>
    public IReadOnlyList<Certificate?> Certificates => _certificates;

    /// <summary>How much there is of what tasks hold beside hands.</summary>
    public ImmutableArray<int> Capacities { get; private set; }

    /// <summary>The work of a proven job.</summary>
    /// <param name="steps">Its steps, with the people that they take.</param>
    /// <param name="strip">Its strip.</param>
    /// <param name="refit">Its refit.</param>
    public static CrewJob Of(ImmutableArray<PlannedStep> steps, StripRun strip, RefitRun refit)
    {
        var job = new CrewJob(steps, strip, refit);
        foreach (var phase in steps.GroupBy(step => step.Phase))
        {
            job.Add([.. phase]);
        }

        (job.Capacities, job.Tasks) = MovedParts.KeepApart(job._tasks.ToImmutable(), job._steps.ToImmutable());
        (job.Capacities, job.Tasks) = RoomUses.Add(job.Capacities, job.Tasks, job._steps.ToImmutable());
        job.Steps = job._steps.ToImmutable();
        return job;
    }

    /// <summary>The same for so many people.</summary>
    /// <param name="people">How many there are.</param>
    public CrewProblem For(int people) => For(new CrewSize(people));

    /// <summary>The same for a crew.</summary>
    /// <param name="crew">Who they are.</param>
    public CrewProblem For(CrewSize crew) => new(Tasks, crew.People)
    {
        Capacities = Capacities,
        Holders = [.. _certificates.Select(one => crew.HoldersOf(one?.Name ?? ""))],
    };

    /// <summary>How one person works it off, in the order of the cards.</summary>
    public CrewSchedule ByTheCards()
    {
        var starts = new long[Tasks.Length];
        var (problem, clock) = (For(1), 0L);
        var lags = problem.Lags().ToLookup(lag => lag.Later);
        for (var task = 0; task < starts.Length; task++)
        {
            starts[task] = lags[task].Select(lag => starts[lag.Earlier] + lag.Least).Append(problem.HandsOf(task) > 0 ? clock : 0).Max();
            clock = problem.HandsOf(task) > 0 ? starts[task] + Tasks[task].Attended : clock;
        }

        return CrewSchedule.With(problem, starts, null);
    }

    private void Add(ImmutableArray<PlannedStep> phase)
    {
        _first = _tasks.Count;
        for (var at = 0; at < phase.Length;)
        {
            var step = phase[at];
            var count = step.Test == 0 ? 1 : phase.Skip(at).TakeWhile(next => next.Test == step.Test).Count();
            if (step.Verb == Verb.Pause)
            {
                Gate(StepTime.Of(step).Duration, [step]);
            }
            else
            {
                Add(phase.Slice(at, count), phase.AsSpan(..at));
            }

            at += count;
        }

        Gate(0, []);
    }

    /// <summary>Adds a step, or the steps of a test, which come right one after the other.</summary>
    private void Add(ImmutableArray<PlannedStep> steps, ReadOnlySpan<PlannedStep> earlier)
    {
        var times = steps.Select(StepTime.Of).ToList();
        var step = steps[0];
        var index = _tasks.Count;
        var isPlaced = IsText(step) || ComesBack(step) || (step.Verb == Verb.Set && step.Phase == PlanPhase.Refit);
        HashSet<int> after = [.. _gates];
        HashSet<int> afterHands = isPlaced ? [.. Enumerable.Range(_first, index - _first)] : [];
        foreach (var one in steps)
        {
            foreach (var edge in _before[one.Number])
            {
                var before = StepList.NumberOf(edge.Earlier);
                if (_taskOf.TryGetValue(before, out var task) && task != index)
                {
                    (Awaits(one, edge, _all[before - 1]) ? after : afterHands).Add(task);
                }
            }

            after.UnionWith(one.WaitsFor.Select(before => _taskOf[before]).Where(task => task != index));
        }

        if (step is { Verb: Verb.Unsupport, Part: { } propped })
        {
            foreach (var curing in earlier)
            {
                if (curing.Cure is not null && curing.Joint is { } joint && Assemblies.BelowTheCommonPart(joint).Contains(propped))
                {
                    after.Add(_taskOf[curing.Number]);
                }
            }
        }

        afterHands.ExceptWith(after);
        var attended = JobTimes.Whole(times.Take(times.Count - 1).Sum(time => time.Held)) + JobTimes.Whole(times[^1].Attended);
        var duration = Math.Max(attended, JobTimes.Whole(times.Take(times.Count - 1).Sum(time => time.Held)) + JobTimes.Whole(times[^1].Duration));
        _tasks.Add(new CrewTask(attended, duration, steps.Max(one => one.People))
        {
            After = [.. after.Order()],
            AfterHandsOf = [.. afterHands.Order()],
            StandClear = Clearances.StandClear(steps, number => _actions[number]),
            Certificates = [.. steps.SelectMany(CertifiedWork.Of).Distinct().Select(NumberOf).Order()],
            KnownFrom = step.Phase == PlanPhase.Refit && _taskOf.TryGetValue(step.Mirror, out var half) ? half : -1,
        });
        Note(index, steps);
        if (MakesSafe(step) || ComesBack(step) || (step.Phase != PlanPhase.Refit && (IsText(step) || step.Verb == Verb.Set)))
        {
            _gates.Add(index);
        }
    }

    private int NumberOf(Certificate? certificate)
    {
        if (_certificates.IndexOf(certificate) is >= 0 and var known)
        {
            return known;
        }

        _certificates.Add(certificate);
        return _certificates.Count - 1;
    }

    /// <summary>A mark in time: all hands are free before it, and nothing starts until it is over. What runs by itself and what cures goes on.</summary>
    private void Gate(double seconds, ImmutableArray<PlannedStep> steps)
    {
        var index = _tasks.Count;
        _tasks.Add(new CrewTask(0, JobTimes.Whole(seconds), 0)
        {
            After = [.. _gates.Order()],
            AfterHandsOf = [.. Enumerable.Range(_first, index - _first).Where(task => !_gates.Contains(task))],
        });
        Note(index, steps);
        _gates.Clear();
        _gates.Add(index);
        _first = index + 1;
    }

    private void Note(int task, ImmutableArray<PlannedStep> steps)
    {
        _steps.Add(steps);
        foreach (var step in steps)
        {
            _taskOf.Add(step.Number, task);
        }
    }

    /// <summary>
    /// Whether a step waits for the end of what runs or cures from an earlier one on. What only comes later because it would be in the way leaves a
    /// fresh joint unloaded, and more pieces of the same joint go on meanwhile.
    /// </summary>
    private static bool Awaits(PlannedStep step, OrderEdge edge, PlannedStep earlier) => earlier.Cure is null
        || earlier.InBackground
        || (edge.Reason is Enables or Ruled && (earlier.Target is null || earlier.Target != step.Target));

    private static bool MakesSafe(PlannedStep step) => step.Target is Energy && step.Verb is Verb.Isolate or Verb.Verify && step.Test == 0;

    private static bool ComesBack(PlannedStep step) => step.Target is Energy && step.Verb == Verb.Restore && step.Test == 0;

    private static bool IsText(PlannedStep step) => step.Target is null && step.Test == 0;
}
