using System.Runtime;
using ProcScript.Cli.Sources;
using ProcScript.LanguageServer;

namespace ProcScript.Cli.Verbs;

/// <summary><c>server</c>: hosts the language server.</summary>
internal static class ServerVerb
{
    /// <summary>Serves until the editor leaves.</summary>
    public static async Task<ExitCode> RunAsync(Surroundings around, CancellationToken stop)
    {
        // Garbage is collected beside the work: whoever types is not to wait for it.
        GCSettings.LatencyMode = GCLatencyMode.Interactive;
        using EditorHost host = new(() => around.Today);
        await using var input = around.OpenInput();
        await using var output = around.OpenOutput();
        return await EditorServer.RunAsync(input, output, host, stop) ? ExitCode.Clean : ExitCode.Findings;
    }
}
