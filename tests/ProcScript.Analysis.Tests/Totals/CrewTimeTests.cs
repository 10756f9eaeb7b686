using System.Collections.Immutable;
using CsCheck;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Totals;

namespace ProcScript.Analysis.Tests.Totals;

public class CrewTimeTests
{
    // R. L. Graham (1969), Bounds on multiprocessing timing anomalies, SIAM Journal on Applied Mathematics 17, 416–429: nine tasks;
    // the makespans by the list rule as the encyclopedia article "List scheduling" gives them.
    private static readonly ImmutableArray<CrewTask> Graham =
    [
        Task(3), Task(2), Task(2), Task(2), Task(4, 3), Task(4, 3), Task(4, 3), Task(4, 3), Task(9, 0),
    ];

    [Theory]
    [InlineData(3, 12)]
    [InlineData(4, 15)]
    public void Grahams_nine_tasks_take_as_long_as_published(int crew, long expected) =>
        Assert.Equal(expected, End(Graham, crew, InOrder(9)));

    [Fact]
    public void Grahams_tasks_take_longer_when_each_gets_shorter()
    {
        var shorter = Graham.Select(task => task with { Attended = task.Attended - 1, Duration = task.Duration - 1 });
        Assert.Equal(13, End([.. shorter], 3, InOrder(9)));
    }

    [Fact]
    public void Grahams_tasks_take_longer_when_less_has_to_wait() =>
        Assert.Equal(16, End(Graham.SetItem(4, Task(4)).SetItem(5, Task(4)), 3, InOrder(9)));

    [Fact]
    public void The_reported_time_does_not_get_longer_with_a_fourth_person() =>
        Assert.Equal((12, 12), (CrewTime.Least(new(Graham, 3)), CrewTime.Least(new(Graham, 4))));

    // A. Scholl (1993), Data of Assembly Line Balancing Problems, TH Darmstadt: the precedence graph Jackson (11 tasks). The least
    // makespan of two workers, 28, is not published: an exact search over sets of done tasks gave it. One worker takes 46.
    [Fact]
    public void Jackson_by_two_is_one_above_the_optimum() => Assert.Equal(29, CrewTime.Least(new(
        [
            Task(6), Task(2, 0), Task(5, 0), Task(7, 0), Task(1, 0), Task(2, 1), Task(3, 2, 3, 4), Task(6, 5), Task(5, 6),
            Task(5, 7), Task(4, 8, 9),
        ],
        2)));

    // As above: the graph Mansoor (11 tasks); least makespan of two workers 116, of one 185.
    [Fact]
    public void Mansoor_by_two_is_the_optimum() => Assert.Equal(116, CrewTime.Least(new(
        [
            Task(4), Task(38), Task(45), Task(12, 0, 1), Task(10, 1), Task(8, 3), Task(12, 4), Task(10, 5), Task(2, 6),
            Task(10, 7, 8), Task(34, 2, 9),
        ],
        2)));

    [Fact]
    public void A_task_for_two_waits_until_both_are_free() =>
        Assert.Equal(15, End([Task(10), Task(5) with { Hands = 2 }], 2, InOrder(2)));

    [Fact]
    public void A_task_for_more_than_there_are_takes_all() =>
        Assert.Equal(15, End([Task(10), Task(5) with { Hands = 4 }], 2, InOrder(2)));

    [Fact]
    public void What_runs_by_itself_frees_its_people_and_holds_up_what_needs_it() =>
        Assert.Equal(
            18,
            End([new CrewTask(3, 10, 1), Task(5), new CrewTask(8, 8, 1) { After = [0] }], 1, InOrder(3)));

    [Fact]
    public void What_runs_by_itself_belongs_to_the_job_to_its_end() =>
        Assert.Equal(10, End([new CrewTask(3, 10, 1), Task(5)], 1, InOrder(2)));

    [Fact]
    public void A_mark_waits_for_hands_and_not_for_what_runs_by_itself() =>
        Assert.Equal(
            10,
            End(
                [new CrewTask(3, 10, 1), new CrewTask(0, 0, 0) { AfterHandsOf = [0] }, new CrewTask(7, 7, 1) { After = [1] }],
                2,
                InOrder(3)));

    [Fact]
    public void More_people_never_take_longer_and_no_crew_beats_the_longest_chain() => Jobs.Sample(tasks =>
    {
        var times = Enumerable.Range(1, 4).Select(crew => CrewTime.Least(new(tasks, crew))).ToArray();
        var chain = LongestChain(tasks);
        return times.Zip(times.Skip(1)).All(pair => pair.Second <= pair.First)
            && times.All(time => time >= chain)
            && times.Select((time, i) => time * (i + 1) >= tasks.Sum(task => task.Attended * Math.Min(task.Hands, 1))).All(x => x);
    });

    private static readonly Gen<ImmutableArray<CrewTask>> Jobs =
        Gen.Select(Gen.Int[0, 20], Gen.Int[0, 30], Gen.Int[1, 3], Gen.Int[0, 1000].Array[0, 4])
            .Array[1, 25]
            .Select(rows => rows.Select((row, i) => new CrewTask(row.Item1, row.Item1 + row.Item2, row.Item3)
            {
                After = i == 0 ? [] : [.. row.Item4.Select(before => before % i).Distinct()],
            }).ToImmutableArray());

    private static long LongestChain(ImmutableArray<CrewTask> tasks)
    {
        var end = new long[tasks.Length];
        for (var task = 0; task < tasks.Length; task++)
        {
            end[task] = tasks[task].Duration + tasks[task].After.Select(before => end[before]).DefaultIfEmpty(0L).Max();
        }

        return end.Max();
    }

    private static CrewTask Task(long time, params int[] after) => new(time, time, 1) { After = [.. after] };

    private static long[] InOrder(int count) => [.. Enumerable.Range(0, count)];

    private static long End(ImmutableArray<CrewTask> tasks, int crew, long[] rank) =>
        ListRule.Starts(new CrewProblem(tasks, crew), rank).Select((start, task) => start + tasks[task].Duration).Max();
}
