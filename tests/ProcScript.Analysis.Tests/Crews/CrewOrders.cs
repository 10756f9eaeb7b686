using System.Collections.Immutable;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Tests.Crews;

/// <summary>A proven job with a schedule, and the orders that the schedule leaves people.</summary>
internal sealed class CrewOrders
{
    private readonly CrewOrder _order;
    private uint _state = 2_463_534_242;

    public CrewOrders(ProcedureReport report, int people, ICrewScheduler scheduler)
    {
        (Strip, Refit) = (report.Outcome.Strip!, report.Outcome.Refit!);
        Steps = PlanBuilder.Steps(report.Library, Strip, Refit, report.Outcome.OwnSettings);
        Job = CrewJob.Of(Steps, Strip, Refit);
        Problem = Job.For(people);
        Schedule = scheduler.Schedule(Problem);
        _order = new CrewOrder(Problem, Schedule);
    }

    public StripRun Strip { get; }

    public RefitRun Refit { get; }

    public ImmutableArray<PlannedStep> Steps { get; }

    public CrewJob Job { get; }

    public CrewProblem Problem { get; }

    public CrewSchedule Schedule { get; }

    public CrewProof Proof => new(Strip, Refit);

    public bool IsProved => CrewPlans.IsProved(Job, Problem, Schedule, Strip, Refit);

    /// <summary>The task that a step belongs to.</summary>
    public int TaskOf(int step) => Job.Steps.Index().First(task => task.Item.Any(one => one.Number == step)).Index;

    /// <summary>An order that the schedule leaves people, drawn by chance: the numbers of the actions.</summary>
    public IEnumerable<int> Any()
    {
        var left = Enumerable.Range(0, Problem.Tasks.Length).ToList();
        while (left.Count > 0)
        {
            var ready = left.FindAll(task => !left.Exists(other => _order.IsBefore(other, task)));
            var next = ready[(int)(Draw() % (uint)ready.Count)];
            left.Remove(next);
            foreach (var step in Job.Steps[next])
            {
                yield return step.Number - 1;
            }
        }
    }

    /// <summary>G. Marsaglia's xorshift.</summary>
    private uint Draw()
    {
        _state ^= _state << 13;
        _state ^= _state >> 17;
        return _state ^= _state << 5;
    }
}
