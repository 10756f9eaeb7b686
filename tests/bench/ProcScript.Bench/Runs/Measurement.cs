using System.Globalization;

namespace ProcScript.Bench.Runs;

/// <summary>Several runs of one thing, printed as a row of a table.</summary>
internal static class Measurement
{
    private const int UsualRuns = 5;

    /// <summary>The head of the table.</summary>
    public static void PrintHead()
    {
        Console.WriteLine("| what | program | best s | median s | processor s | lines/s | peak MB |");
        Console.WriteLine("|---|---|---|---|---|---|---|");
    }

    /// <summary>Measures and prints a row.</summary>
    /// <param name="what">What is measured.</param>
    /// <param name="program">Which program.</param>
    /// <param name="lines">How many lines it reads; 0 where that says nothing.</param>
    /// <param name="run">One run.</param>
    /// <param name="runs">How many runs, after one that only warms up.</param>
    public static void Print(string what, string program, int lines, Func<ProcessRun> run, int runs = UsualRuns)
    {
        run();
        var all = Enumerable.Range(0, runs).Select(_ => run()).OrderBy(one => one.Seconds).ToList();
        var median = all[runs / 2].Seconds;
        var rate = lines == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{lines / median:N0}");
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {what} | {program} | {all[0].Seconds:F3} | {median:F3} | {all.Min(one => one.ProcessorSeconds):F2} | {rate} | {all.Max(one => one.PeakMegabytes):F0} |"));
    }
}
