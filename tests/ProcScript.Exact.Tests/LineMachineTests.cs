using System.Globalization;
using ProcScript.Analysis;
using ProcScript.Analysis.Crews;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Exact.Tests;

/// <summary>
/// The assembly lines of the literature as machines: each task is a part that takes its time off and on, each precedence a part that hides another.
/// They go through the whole compiler, from the text to who does what.
/// </summary>
[Slow]
public class LineMachineTests(ITestOutputHelper output)
{
    private const int Unit = 60;

    private static readonly ListScheduler Lists = new();
    private static readonly ExactScheduler Exact = new();

    // Scholl (1993): the graphs. Their least times by two stand in the file, computed there by another method; those that it lacks are proved here on the
    // graph alone. What comes off in an order goes back in the opposite one, so that both halves of the job take the same least time.
    [Fact]
    public void Two_people_take_a_line_apart_and_put_it_back_in_twice_its_proved_least_time()
    {
        foreach (var row in ReferenceData.Rows("precedence-facts.txt"))
        {
            var graph = row[0];
            var alone = PublishedProblem.Line(graph, 2);
            var best = Exact.Schedule(alone);
            Assert.True(best.IsOptimal, graph);
            var least = row[5] == "-" ? best.End(alone) : long.Parse(row[5], CultureInfo.InvariantCulture);

            var library = LibraryCheck.Run(
                new MemorySourceStore([KeyValuePair.Create("line.proc", TextOf(graph))]), TestContext.Current.CancellationToken);
            Assert.DoesNotContain(library.Findings, found => found.Severity == Severity.Error);
            var report = Assert.Single(library.Procedures);
            Assert.True(report.IsProven, graph);
            Assert.Equal(2 * int.Parse(row[3], CultureInfo.InvariantCulture) * Unit, report.CreatePlan()!.Times.OnePerson);

            var plan = report.CreateCrewPlan(new CrewSize(2), Exact)!;
            Assert.Equal((2.0 * least * Unit, true), (plan.Seconds, plan.IsShortest));
            Assert.Equal(2.0 * int.Parse(row[4], CultureInfo.InvariantCulture) * Unit, plan.CriticalPath.Seconds);
            var found = report.CreateCrewPlan(new CrewSize(2), Lists)!;
            Assert.True(found.Seconds >= plan.Seconds, graph);
            output.WriteLine(FormattableString.Invariant($"{graph}: twice {least} for two, lists {found.Seconds / Unit / 2:0.#}, alone {row[3]}"));
        }
    }

    private static string TextOf(string graph)
    {
        var tasks = ReferenceData.Rows($"precedence-{graph}.txt");
        var sorted = new List<string[]>();
        while (sorted.Count < tasks.Count)
        {
            sorted.Add(tasks.First(task => !sorted.Contains(task) && Before(task).All(earlier => sorted.Exists(one => one[0] == earlier))));
        }

        var parts = tasks.Select(task => string.Create(
            CultureInfo.InvariantCulture,
            $"  part task_{task[0]} \"part {task[0]}\" {{ time {int.Parse(task[1], CultureInfo.InvariantCulture) * Unit} s{(task[2] == "-" ? "" : $"  behind {string.Join(", ", Before(task).Select(earlier => $"task_{earlier}"))}")} }}\n"));
        return $"machine line_1 \"line\" {{\n{string.Concat(parts)}}}\n\nprocedure all_off \"Take all of it off\" on line_1 {{\n"
            + $"{string.Concat(sorted.Select(task => $"  goal remove task_{task[0]}\n"))}  stage \"All\" {{\n{string.Concat(sorted.Select(task => $"    remove task_{task[0]}\n"))}  }}\n}}\n";
    }

    private static string[] Before(string[] task) => task[2] == "-" ? [] : task[2].Split(',');
}
