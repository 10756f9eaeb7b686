using ProcScript.Cli.Output;

namespace ProcScript.Cli.Verbs;

/// <summary><c>check</c>: prints the findings and what they come to.</summary>
internal static class CheckVerb
{
    /// <summary>Checks and prints.</summary>
    public static async Task<ExitCode> RunAsync(CheckRequest request, Surroundings around, CancellationToken stop)
    {
        var library = await CheckedLibrary.RunAsync(request.Input, request.Settings.Read, request.Since, around, stop);
        var terminal = Terminal.For(around, request.Colour);
        library.PrintFindings(terminal, stop);
        terminal.WriteLine(new Piece(CheckSummary.Of(library)));
        return library.ExitCode(request.FailOn);
    }
}
