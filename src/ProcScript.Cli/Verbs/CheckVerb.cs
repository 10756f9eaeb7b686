using ProcScript.Cli.Output;
using ProcScript.Cli.Reports;

namespace ProcScript.Cli.Verbs;

/// <summary><c>check</c>: tells the findings and what they come to.</summary>
internal static class CheckVerb
{
    /// <summary>Checks and tells.</summary>
    public static async Task<ExitCode> RunAsync(CheckRequest request, Surroundings around, CancellationToken stop)
    {
        var (startTime, start) = (around.Clock.GetUtcNow(), around.Clock.GetTimestamp());
        var library = await CheckedLibrary.RunAsync(request.Input, request.Settings.Read, request.Since, around, stop);
        if (request.Baseline is { } baseline)
        {
            library = library.Against(BaselineFile.Read(baseline, library.Root, around.CurrentFolder));
        }

        var outcome = library.Outcome with
        {
            FailOn = request.FailOn,
            MostFindings = request.MostFindings,
            Time = request.Time || (around.OutputIsTerminal && request.Output is null)
                ? new CheckTime(startTime, around.Clock.GetElapsedTime(start))
                : null,
        };
        if (request.Output is null)
        {
            Tell(outcome, request, library, around, request.Colour, stop);
        }
        else
        {
            using StringWriter text = new();
            Tell(outcome, request, library, around with { Output = text }, ColourChoice.Never, stop);
            using PendingFiles files = new();
            files.Add(Path.GetFullPath(request.Output, around.CurrentFolder), text.ToString());
            files.Commit(replace: true);
            if (!request.Quiet)
            {
                around.Output.WriteLine(CheckSummary.Of(outcome));
            }
        }

        return library.ExitCode(request.FailOn);
    }

    private static void Tell(
        CheckOutcome outcome, CheckRequest request, CheckedLibrary library, Surroundings around, ColourChoice colour, CancellationToken stop)
    {
        if (request.Format is { } format)
        {
            around.Output.Write(format.Render(outcome));
            return;
        }

        var terminal = Terminal.For(around, colour);
        library.PrintFindings(outcome, terminal, stop);
        if (!request.Quiet)
        {
            RuleSummary.Print(outcome, terminal);
            terminal.WriteLine(new Piece(CheckSummary.Of(outcome)));
        }
    }
}
