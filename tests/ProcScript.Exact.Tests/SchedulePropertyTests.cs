using CsCheck;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact.Tests;

public class SchedulePropertyTests
{
    private static readonly ListScheduler Lists = new(800);
    private static readonly ExactScheduler Exact = new();

    [Fact]
    public void A_schedule_breaks_nothing_and_is_never_below_the_bounds() => Problems.Larger.Sample(
        problem =>
        {
            var schedule = Lists.Schedule(problem);
            Assert.Empty(CrewCheck.Failures(problem, schedule));
            Assert.True(schedule.End(problem) >= CrewBounds.Least(problem));
        },
        iter: Depth.Of(1_000));

    [Fact]
    public void One_more_person_is_never_slower() => Problems.Larger.Sample(
        problem =>
        {
            var ends = Enumerable.Range(1, 4).Select(people => Lists.Schedule(problem.For(people)).End(problem.For(people))).ToList();
            Assert.Equal(ends.OrderDescending(), ends);
        },
        iter: Depth.Of(1_000));

    [Fact]
    public void The_exact_planner_proves_breaks_nothing_and_is_never_above_the_lists() => Problems.Small.Sample(
        problem =>
        {
            var (found, proved) = (Lists.Schedule(problem), Exact.Schedule(problem));
            Assert.Empty(CrewCheck.Failures(problem, proved));
            Assert.True(proved.IsOptimal);
            Assert.True(proved.End(problem) <= found.End(problem) && proved.End(problem) >= CrewBounds.Least(problem));
        },
        iter: Depth.Of(120));

    [Fact]
    public void The_same_problem_has_the_same_schedule() => Problems.Larger.Sample(
        problem => Lists.Schedule(problem).Starts.SequenceEqual(new ListScheduler(800).Schedule(problem).Starts),
        iter: Depth.Of(100));
}
