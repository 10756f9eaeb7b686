using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace ProcScript.Bench.Runs;

/// <summary>One run of a whole process.</summary>
/// <param name="Seconds">From its start to its end.</param>
/// <param name="ProcessorSeconds">What it took of all processors together, read while it ran: on a busy machine it says more than the clock.</param>
/// <param name="PeakMegabytes">The most memory that was resident, read while it ran; 0 where the system does not tell.</param>
internal readonly record struct ProcessRun(double Seconds, double ProcessorSeconds, double PeakMegabytes)
{
    /// <summary>Runs a program to its end; anything but exit code 0 ends the benchmark, since it then measured something else.</summary>
    public static ProcessRun Of(IReadOnlyList<string> program, params IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new(program[0], program.Skip(1).Concat(arguments)) { RedirectStandardOutput = true };
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program[0]} did not start.");
        var output = process.StandardOutput.ReadToEndAsync();
        var (peak, processor) = (0.0, 0.0);
        while (!process.WaitForExit(TimeSpan.FromMilliseconds(2)))
        {
            peak = Math.Max(peak, PeakOf(process.Id));
            processor = Math.Max(processor, ProcessorOf(process));
        }

        var seconds = clock.Elapsed.TotalSeconds;
        return process.ExitCode == 0
            ? new ProcessRun(seconds, processor, peak)
            : throw new InvalidOperationException($"{string.Join(' ', start.ArgumentList.Prepend(program[0]))} ended with {process.ExitCode}:\n{output.Result}");
    }

    private static double ProcessorOf(Process process)
    {
        try
        {
            process.Refresh();
            return process.TotalProcessorTime.TotalSeconds;
        }
        catch (Exception fault) when (fault is InvalidOperationException or Win32Exception)
        {
            // It ended between two looks.
            return 0;
        }
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
