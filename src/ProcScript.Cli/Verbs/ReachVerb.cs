using ProcScript.Analysis.Reaching;
using ProcScript.Cards.Reaching;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Model;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>reach</c> is asked to do.</summary>
/// <param name="Input">Where the library is.</param>
/// <param name="Question">The question.</param>
/// <param name="Explain">The action of which alone the reasons are told; null for the whole answer.</param>
/// <param name="Write">The file to write the procedure to; null for none.</param>
/// <param name="AsText">Whether people read the answer.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record ReachVerbRequest(InputRequest Input, ReachRequest Question, string? Explain, string? Write, bool AsText, ColourChoice Colour);

/// <summary><c>reach</c>: says how something on a machine is reached.</summary>
internal static class ReachVerb
{
    /// <summary>Searches and tells.</summary>
    public static async Task<ExitCode> RunAsync(ReachVerbRequest request, Surroundings around, CancellationToken stop)
    {
        DiskSourceStore store = new(SourceSelection.Find(request.Input, around.CurrentFolder), around.OpenInput);
        var settings = new SettingsRequest(null).Read(store, around.Today);
        try
        {
            var report = await Task.Run(() => LibraryReach.Find(LibraryBinder.Bind(store, stop), settings, request.Question), stop).WaitAsync(stop);
            store.RefuseUnreadable();
            if (request.Explain is { } action)
            {
                Answer.Write(Terminal.For(around, request.Colour), ReachText.Explain(report, action));
            }
            else if (request.AsText)
            {
                Answer.Write(Terminal.For(around, request.Colour), ReachText.Lines(report));
            }
            else
            {
                around.Output.Write(LogCommands.DisarmJson(ReachText.Json(report)));
            }

            if (request.Write is { } file)
            {
                await WrittenProcedure.WriteAsync(file, report.Draft, report.Uses, store, settings, around, stop);
            }

            return ExitCode.Clean;
        }
        catch (ReachRefusedException refusal)
        {
            return Answer.Refuse(refusal, store, around);
        }
    }
}
