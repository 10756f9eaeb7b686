using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact.Tests;

// R. L. Graham (1969), Bounds on multiprocessing timing anomalies; the nine tasks and what comes of them stand in the data file.
public class GrahamTests
{
    private static readonly ListScheduler Lists = new();
    private static readonly ListScheduler Quick = new(300);
    private static readonly ExactScheduler Exact = new();

    private static ImmutableArray<CrewTask> Nine =>
    [
        .. ReferenceData.Rows("graham-anomaly.txt").Select(row => Task(
            int.Parse(row[1], CultureInfo.InvariantCulture),
            [.. row[2] == "-" ? [] : row[2].Split(',').Select(before => int.Parse(before, CultureInfo.InvariantCulture) - 1)])),
    ];

    private static ImmutableArray<CrewTask> Shorter => [.. Nine.Select(task => task with { Attended = task.Attended - 1, Duration = task.Duration - 1 })];

    private static ImmutableArray<CrewTask> Looser => Nine.SetItem(4, Nine[4] with { After = [] }).SetItem(5, Nine[5] with { After = [] });

    [Fact]
    public void The_list_rule_takes_as_long_as_published_and_gets_slower()
    {
        Assert.Equal((12L, 15L), (ByTheRule(Nine, 3), ByTheRule(Nine, 4)));
        Assert.Equal((13L, 16L), (ByTheRule(Shorter, 3), ByTheRule(Looser, 3)));
    }

    [Fact]
    public void The_plan_takes_the_least_time_there_is_and_never_gets_slower()
    {
        foreach (var (tasks, people, least) in (IEnumerable<(ImmutableArray<CrewTask>, int, long)>)
            [(Nine, 2, 17), (Nine, 3, 12), (Nine, 4, 12), (Shorter, 3, 10), (Looser, 3, 12)])
        {
            var problem = new CrewProblem(tasks, people);
            Assert.Equal(least, Lists.Schedule(problem).End(problem));
            Assert.Equal(least, Exact.Schedule(problem).End(problem));
        }
    }

    [Fact]
    public void People_who_keep_to_the_plan_are_never_slower_where_tasks_get_shorter_or_wait_for_less() =>
        Gen.Select(Problems.Small, Gen.Int[0, int.MaxValue]).Sample(
            (problem, cut) =>
            {
                var now = problem with
                {
                    Tasks = [.. problem.Tasks.Select((task, at) => (cut >> (at % 30)) % 2 == 0
                        ? task
                        : task with { Attended = task.Attended * 2 / 3, Duration = task.Duration * 2 / 3, After = task.After.Length > 1 ? task.After[1..] : task.After })],
                };
                var plan = Quick.Schedule(problem);
                var kept = plan.Kept(problem, now);
                return kept.End(now) <= plan.End(problem) && !CrewCheck.Failures(now, kept).Any();
            },
            iter: Depth.Of(400));

    private static long ByTheRule(ImmutableArray<CrewTask> tasks, int people) =>
        ListRule.Starts(new CrewProblem(tasks, people), [.. Enumerable.Range(0, tasks.Length)]).Select((start, task) => start + tasks[task].Duration).Max();

    private static CrewTask Task(int time, ImmutableArray<int> after) => new(time, time, 1) { After = after };
}
