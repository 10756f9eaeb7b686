using System.Diagnostics;
using System.Globalization;

namespace ProcScript.Bench.Runs;

/// <summary>One run of a whole process.</summary>
/// <param name="Seconds">From its start to its end.</param>
/// <param name="PeakMegabytes">The most memory that was resident, read while it ran; 0 where the system does not tell.</param>
internal readonly record struct ProcessRun(double Seconds, double PeakMegabytes)
{
    /// <summary>Runs a program to its end; anything but exit code 0 ends the benchmark, since it then measured something else.</summary>
    public static ProcessRun Of(IReadOnlyList<string> program, params IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new(program[0], program.Skip(1).Concat(arguments)) { RedirectStandardOutput = true };
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program[0]} did not start.");
        var output = process.StandardOutput.ReadToEndAsync();
        var peak = 0.0;
        while (!process.WaitForExit(TimeSpan.FromMilliseconds(2)))
        {
            peak = Math.Max(peak, PeakOf(process.Id));
        }

        var seconds = clock.Elapsed.TotalSeconds;
        return process.ExitCode == 0
            ? new ProcessRun(seconds, peak)
            : throw new InvalidOperationException($"{string.Join(' ', start.ArgumentList.Prepend(program[0]))} ended with {process.ExitCode}:\n{output.Result}");
    }

    /// <summary>The system's own high-water mark, so that reading it now and then loses next to nothing.</summary>
    private static double PeakOf(int process)
    {
        try
        {
            var line = File.ReadLines($"/proc/{process}/status").FirstOrDefault(text => text.StartsWith("VmHWM:", StringComparison.Ordinal));
            return line is null ? 0 : double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2], CultureInfo.InvariantCulture) / 1024;
        }
        catch (IOException)
        {
            return 0;
        }
    }
}
