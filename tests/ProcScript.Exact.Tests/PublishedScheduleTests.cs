using System.Globalization;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact.Tests;

public class PublishedScheduleTests(ITestOutputHelper output)
{
    private static readonly ListScheduler Lists = new();
    private static readonly ExactScheduler Exact = new();

    // Kolisch, Sprecher (1997), PSPLIB, and Patterson (1984): what is read, and from where, stands in the data files.
    private static readonly (string File, int Optimum)[] Projects =
    [
        ("rcpsp-j301_1", 43), ("rcpsp-j301_2", 47), ("rcpsp-j301_3", 47), ("rcpsp-j301_4", 62), ("rcpsp-j301_5", 39), ("rcpsp-j301_6", 48),
        ("rcpsp-j301_7", 60), ("rcpsp-j301_8", 53), ("rcpsp-j301_9", 49), ("rcpsp-j301_10", 45), ("rcpsp-pat1", 19), ("rcpsp-pat2", 7),
        ("rcpsp-pat3", 20), ("rcpsp-pat7", 8), ("rcpsp-pat8", 11), ("rcpsp-pat9", 19), ("rcpsp-pat10", 14), ("rcpsp-pat11", 18),
    ];

    [Fact]
    public void Lists_are_never_below_the_published_optimum_and_close_to_it_and_the_exact_planner_is_at_it()
    {
        var gaps = new List<double>();
        foreach (var (file, optimum) in Projects)
        {
            var problem = PublishedProblem.Project($"{file}.txt");
            var (found, proved) = (Lists.Schedule(problem), Exact.Schedule(problem));
            Assert.Empty(CrewCheck.Failures(problem, found));
            Assert.Empty(CrewCheck.Failures(problem, proved));
            Assert.True(found.End(problem) >= optimum, $"{file}: {found.End(problem)} is below the published {optimum}");
            Assert.True(CrewBounds.Least(problem) <= optimum, file);
            Assert.Equal((optimum, true), (proved.End(problem), proved.IsOptimal));
            gaps.Add((found.End(problem) - optimum) / (double)optimum);
            output.WriteLine(FormattableString.Invariant($"{file}: {found.End(problem)}, optimum {optimum}"));
        }

        output.WriteLine(FormattableString.Invariant($"mean gap {gaps.Average():P2}, greatest {gaps.Max():P2}"));
        Assert.True(gaps.Average() <= 0.02);
    }

    // Scholl (1993): the graphs. Their least times by two are computed, unpublished; four have none in the file and are held to their bounds alone.
    [Fact]
    public void Two_people_do_the_lines_in_the_proved_least_time()
    {
        foreach (var row in ReferenceData.Rows("precedence-facts.txt"))
        {
            var problem = PublishedProblem.Line(row[0], 2);
            var (found, proved) = (Lists.Schedule(problem), Exact.Schedule(problem));
            output.WriteLine(FormattableString.Invariant($"{row[0]}: lists {found.End(problem)}, exact {proved.End(problem)}, file {row[5]}"));
            Assert.Empty(CrewCheck.Failures(problem, proved));
            Assert.True(proved.IsOptimal, row[0]);
            Assert.Equal(int.Parse(row[4], CultureInfo.InvariantCulture), CrewBounds.CriticalPath(problem));
            Assert.True(found.End(problem) >= proved.End(problem), row[0]);
            if (row[5] != "-")
            {
                Assert.Equal(int.Parse(row[5], CultureInfo.InvariantCulture), proved.End(problem));
            }
        }
    }

    // Scholl (1993): the least numbers of stations for a cycle time, of which 54 are read and all proved. A plain run takes those of the first graphs.
    [Fact]
    public void One_person_in_shifts_of_the_cycle_time_needs_as_many_as_the_line_has_stations_at_the_least()
    {
        var rows = ReferenceData.Rows("precedence-optima.txt");
        var left = 0;
        foreach (var row in rows.Where(row => Depth.IsWhole || row[0] is "mertens-7" or "bowman-8" or "jaeschke-9" or "jackson-11" or "mansoor-11"))
        {
            var (cycle, stations) = (int.Parse(row[1], CultureInfo.InvariantCulture), int.Parse(row[2], CultureInfo.InvariantCulture));
            var (enough, end) = PublishedProblem.Shifts(row[0], cycle, stations);
            var (tooFew, early) = PublishedProblem.Shifts(row[0], cycle, stations - 1);
            var best = Exact.Schedule(enough);
            Assert.Empty(CrewCheck.Failures(enough, best));
            Assert.True(Lists.Schedule(tooFew).End(tooFew) > early, $"{row[0]} {cycle}: lists need fewer than the proved {stations}");
            var never = Exact.Schedule(tooFew);
            Assert.True(never.End(tooFew) > early, $"{row[0]} {cycle}: {stations - 1} are enough");
            output.WriteLine(FormattableString.Invariant($"{row[0]} {cycle}: {stations} {(best.End(enough) == end && never.Least > early ? "proved" : "open")}"));
            left += best.End(enough) == end && never.Least > early ? 0 : 1;
        }

        Assert.Equal(0, left);
    }
}
