using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Watching;

/// <summary><c>build --watch</c>: builds whenever something changes, and shows the packs in a browser.</summary>
internal static class BuildWatch
{
    /// <summary>Builds and serves until it is stopped.</summary>
    /// <param name="request">What to build.</param>
    /// <param name="port">The port to serve at; null for a usual one.</param>
    /// <param name="around">The run.</param>
    /// <param name="stop">Ends it.</param>
    public static async Task<ExitCode> RunAsync(BuildRequest request, int? port, Surroundings around, CancellationToken stop)
    {
        using var server = LiveServer.Start(Path.GetFullPath(request.Output, around.CurrentFolder), port);
        around.Output.WriteLine($"serving packs at {server.Address}");
        var templates = request.Templates is { } typed ? Path.GetFullPath(typed, around.CurrentFolder) : null;
        return await WatchLoop.RunAsync(
            request.Input,
            templates,
            async () =>
            {
                var isClean = false;
                try
                {
                    isClean = await BuildVerb.RunAsync(request, around, stop) == ExitCode.Clean;
                }
                finally
                {
                    await server.AnnounceAsync(isClean);
                }
            },
            around,
            stop);
    }
}
