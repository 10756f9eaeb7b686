using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact.Tests;

/// <summary>Problems of the literature, read from the data files in place.</summary>
internal static class PublishedProblem
{
    /// <summary>A project with limited resources: activity, duration, demand of each resource, a colon, its direct successors.</summary>
    public static CrewProblem Project(string file)
    {
        var rows = ReferenceData.Rows(file);
        var capacities = ReferenceData.Comments(file).Single(line => line.StartsWith("# capacities:", StringComparison.Ordinal)).Split(' ')[2..];
        var before = rows.SelectMany(row => row[^1] == "-" ? [] : row[^1].Split(',').Select(later => (Later: Number(later), Earlier: Number(row[0]))))
            .ToLookup(pair => pair.Later, pair => pair.Earlier - 1);
        return new CrewProblem(
            [
                .. rows.Select(row => new CrewTask(Number(row[1]), Number(row[1]), 0)
                {
                    After = [.. before[Number(row[0])]],
                    Uses = [.. row[2..^2].Select((amount, resource) => new CrewUse(resource, Number(amount))).Where(use => use.Amount > 0)],
                }),
            ],
            1)
        {
            Capacities = [.. capacities.Select(Number)],
        };
    }

    /// <summary>A precedence graph of an assembly line: task, time, direct predecessors; each task takes one person.</summary>
    public static CrewProblem Line(string graph, int people)
    {
        var rows = ReferenceData.Rows($"precedence-{graph}.txt").ToDictionary(row => row[0]);
        var sorted = new List<string>();
        while (sorted.Count < rows.Count)
        {
            sorted.Add(rows.Keys.First(task => !sorted.Contains(task) && Before(rows[task]).All(sorted.Contains)));
        }

        return new CrewProblem(
            [.. sorted.Select(task => new CrewTask(Number(rows[task][1]), Number(rows[task][1]), 1) { After = [.. Before(rows[task]).Select(earlier => sorted.IndexOf(earlier))] })],
            people);
    }

    /// <summary>
    /// A line with so many stations as shifts of one person: a station takes no more than the cycle time, as no task may be left half done at the end
    /// of a shift, and what comes first is in the same station or an earlier one. Between two shifts stands a break of one unit; the shifts follow on
    /// each other, so that a job that fits into them ends with the last, and one that does not ends later.
    /// </summary>
    public static (CrewProblem Problem, long End) Shifts(string graph, int cycle, int stations)
    {
        var line = Line(graph, 1);
        var tasks = ImmutableArray.CreateBuilder<CrewTask>();
        tasks.AddRange(line.Tasks);
        for (var shift = 0; shift < stations; shift++)
        {
            tasks.Add(new CrewTask(0, cycle, 0) { After = shift == 0 ? [] : [tasks.Count - 1] });
            if (shift < stations - 1)
            {
                tasks.Add(new CrewTask(1, 1, 1) { After = [tasks.Count - 1] });
            }
        }

        return (new CrewProblem(tasks.ToImmutable(), 1), ((long)stations * cycle) + stations - 1);
    }

    private static string[] Before(string[] row) => row[2] == "-" ? [] : row[2].Split(',');

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
