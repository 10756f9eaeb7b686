using CsCheck;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact.Tests;

[Slow]
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
            // Where only the one more holds what is asked for, the fewer were held to less.
            Assert.All(
                Enumerable.Range(1, 3).Where(people => problem.For(people).IsAsGoodAs(problem.For(people + 1))),
                people => Assert.True(ends[people] <= ends[people - 1]));
        },
        iter: Depth.Of(1_000, few: 100));

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
    public void A_job_in_pieces_takes_what_the_whole_takes() => Gen.Select(Problems.Small, Problems.Small).Sample(
        (one, two) =>
        {
            var cut = Problems.Joined(one, two);
            Assert.True(one.Tasks.Length + two.Tasks.Length < 2 || CrewSegments.Of(cut).Count > 1);
            // A task of no time at the end that waits for nothing changes nothing, but that nowhere all behind waits for all before.
            var whole = cut with { Tasks = cut.Tasks.Add(new CrewTask(0, 0, 0)) };
            Assert.Single(CrewSegments.Of(whole));
            var (pieces, proved) = (Exact.Schedule(cut), Exact.Schedule(whole));
            Assert.Empty(CrewCheck.Failures(cut, pieces));
            Assert.Equal((proved.End(whole), true, true), (pieces.End(cut), pieces.IsOptimal, proved.IsOptimal));
            Assert.True(CrewBounds.Least(cut) <= pieces.End(cut));
            Assert.Equal(cut.Tasks.Length, CrewSegments.Of(cut).Sum(piece => piece.Problem.Tasks.Length));
        },
        iter: Depth.Of(40, few: 4));

    [Fact]
    public void Who_is_stopped_early_tells_a_bound_that_holds() => Problems.Small.Sample(
        problem =>
        {
            var (stopped, proved) = (new ExactScheduler(effort: 0.0001).Schedule(problem), Exact.Schedule(problem));
            Assert.Empty(CrewCheck.Failures(problem, stopped));
            Assert.True(stopped.Least <= proved.End(problem) && proved.End(problem) <= stopped.End(problem));
            Assert.Equal(stopped.End(problem) <= stopped.Least, stopped.IsOptimal);
        },
        iter: Depth.Of(40));

    [Fact]
    public void The_same_problem_has_the_same_schedule() => Problems.Larger.Sample(
        problem => Lists.Schedule(problem).Starts.SequenceEqual(new ListScheduler(800).Schedule(problem).Starts),
        iter: Depth.Of(100));
}
