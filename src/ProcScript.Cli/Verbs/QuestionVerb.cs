using ProcScript.Analysis;
using ProcScript.Analysis.Reaching;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Model;

namespace ProcScript.Cli.Verbs;

/// <summary>How a question about a machine is asked.</summary>
/// <param name="Input">Where the library is.</param>
/// <param name="AsText">Whether people read the answer.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record QuestionRequest(InputRequest Input, bool AsText, ColourChoice Colour);

/// <summary>Reads a library, answers a question about a machine, and tells.</summary>
internal static class QuestionVerb
{
    /// <summary>Answers in lines or as data.</summary>
    public static async Task<ExitCode> RunAsync<T>(
        QuestionRequest request,
        Func<Library, CheckSettings, T> ask,
        Func<T, IEnumerable<string>> lines,
        Func<T, string> json,
        Surroundings around,
        CancellationToken stop)
    {
        DiskSourceStore store = new(SourceSelection.Find(request.Input, around.CurrentFolder), around.OpenInput);
        var settings = new SettingsRequest(null).Read(store, around.Today);
        try
        {
            var answer = await Task.Run(() => ask(LibraryBinder.Bind(store, stop), settings), stop).WaitAsync(stop);
            store.RefuseUnreadable();
            if (request.AsText)
            {
                Answer.Write(Terminal.For(around, request.Colour), lines(answer));
            }
            else
            {
                around.Output.Write(LogCommands.DisarmJson(json(answer)));
            }

            return ExitCode.Clean;
        }
        catch (ReachRefusedException refusal)
        {
            return Answer.Refuse(refusal, store, around);
        }
    }

    /// <summary>Draws a map.</summary>
    public static async Task<ExitCode> MapAsync(
        InputRequest input, Func<Library, MachineMap> ask, Func<MachineMap, string> draw, string? output, Surroundings around, CancellationToken stop)
    {
        DiskSourceStore store = new(SourceSelection.Find(input, around.CurrentFolder), around.OpenInput);
        try
        {
            var map = await Task.Run(() => ask(LibraryBinder.Bind(store, stop)), stop).WaitAsync(stop);
            store.RefuseUnreadable();
            var text = draw(map);
            if (output is { } file && !OutputFile.IsOutput(file))
            {
                stop.ThrowIfCancellationRequested();
                OutputFile.Write(file, text, store, around).WriteLine($"wrote {file}: {Counted.Of(map.Parts.Length, "part")}");
            }
            else
            {
                around.Output.Write(LogCommands.DisarmLines(text));
            }

            return ExitCode.Clean;
        }
        catch (ReachRefusedException refusal)
        {
            return Answer.Refuse(refusal, store, around);
        }
    }
}
