using System.Collections.Immutable;
using System.Diagnostics;
using ProcScript.Cli.Companions;

namespace ProcScript.Cli.Jobs;

/// <summary><c>job serve</c>: starts the floor server, which is a program of its own.</summary>
internal static class ServeVerb
{
    private const string Name = "procscript-floor";

    /// <summary>Starts it, and waits until it ends.</summary>
    /// <param name="jobs">The folder of jobs.</param>
    /// <param name="more">What else was typed, for it to read.</param>
    /// <param name="around">The surroundings.</param>
    /// <param name="stop">Ends it.</param>
    public static async Task<ExitCode> RunAsync(string jobs, ImmutableArray<string> more, Surroundings around, CancellationToken stop)
    {
        ProcessStartInfo start = new(CompanionProgram.Find(Name, "job serve", around)) { WorkingDirectory = around.CurrentFolder };
        foreach (var argument in (string[])["--jobs", Path.GetFullPath(jobs, around.CurrentFolder), .. more])
        {
            start.ArgumentList.Add(argument);
        }

        using var server = CompanionProgram.Start(start);
        try
        {
            await server.WaitForExitAsync(stop);
        }
        catch (OperationCanceledException) when (!server.HasExited)
        {
            // It hears of Ctrl-C by itself; of a stop by other means it has to be told. No event is lost by it.
            server.Kill(entireProcessTree: true);
            throw;
        }

        return server.ExitCode == 0 ? ExitCode.Clean : ExitCode.Usage;
    }
}
