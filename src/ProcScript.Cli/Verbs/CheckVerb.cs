using ProcScript.Cli.Caching;
using ProcScript.Cli.Output;
using ProcScript.Cli.Reports;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary><c>check</c>: tells the findings and what they come to.</summary>
internal static class CheckVerb
{
    /// <summary>Checks and tells, or tells again what an earlier check of the same files did.</summary>
    public static async Task<ExitCode> RunAsync(CheckRequest request, Surroundings around, CancellationToken stop)
    {
        DiskSourceStore store = new(SourceSelection.Find(request.Input, around.CurrentFolder), around.OpenInput);
        if ((request.CanBeToldAgain(around) ? AnswerCache.For(request.Cache, store, around) : null) is not { } cache)
        {
            return await CheckAsync(request, store, around, stop);
        }

        if (cache.Find(stop) is { } answer)
        {
            around.Output.Write(answer.Text);
            return answer.Code;
        }

        using StringWriter told = new();
        var code = await CheckAsync(request, store, around with { Output = told }, stop);
        around.Output.Write(told.GetStringBuilder());
        Keep(cache, code, told.ToString(), request.Cache, around);
        return code;
    }

    private static async Task<ExitCode> CheckAsync(CheckRequest request, DiskSourceStore store, Surroundings around, CancellationToken stop)
    {
        var (startTime, start) = (around.Clock.GetUtcNow(), around.Clock.GetTimestamp());
        var library = await CheckedLibrary.JudgeAsync(store, request.Settings.Read, request.Since, around, stop);
        if (request.Baseline is { } baseline)
        {
            library = library.Against(BaselineFile.Read(baseline, library.Root, around.CurrentFolder));
        }

        var outcome = library.Outcome with
        {
            FailOn = request.FailOn,
            MostFindings = request.MostFindings,
            NamesAll = request.NamesAll,
            Time = request.TellsTime(around) ? new CheckTime(startTime, around.Clock.GetElapsedTime(start)) : null,
        };
        if (request.Output is not { } output || OutputFile.IsOutput(output))
        {
            Tell(outcome, request, library, around, request.Colour, stop);
        }
        else
        {
            if (request.Baseline is { } known && OutputFile.AreSame(known, output, around))
            {
                throw new UsageException($"cannot write '{output}': it is the baseline that is read. Nothing was written; name another file after -o.");
            }

            using StringWriter text = new();
            Tell(outcome, request, library, around with { Output = text }, ColourChoice.Never, stop);
            _ = OutputFile.Write(output, text.ToString(), store, around);
            if (!request.Quiet)
            {
                around.Output.WriteLine(CheckSummary.Of(outcome));
            }
        }

        return library.ExitCode(request.FailOn);
    }

    private static void Keep(AnswerCache cache, ExitCode code, string told, CacheRequest request, Surroundings around)
    {
        try
        {
            cache.Keep(code, told);
        }
        catch (UsageException failure)
        {
            // The answer is there all the same; only who asked for a cache wants to know that there is none.
            if (request.Folder is not null)
            {
                around.Error.WriteLine($"procscript: nothing is remembered: {failure.Message}");
            }
        }
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
