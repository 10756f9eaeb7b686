using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Drafting.Parts;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>draft --from</c> is asked to do.</summary>
/// <param name="From">The list, as typed.</param>
/// <param name="Name">What the machine is called; null for the list's own name.</param>
/// <param name="Diff">Whether to show what would be written and write nothing.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record DraftFromRequest(string From, string? Name, bool Diff, ColourChoice Colour);

/// <summary><c>draft --from</c>: makes a source of notes or of a list of parts.</summary>
internal static class DraftFromVerb
{
    /// <summary>Reads the list, and writes the source, never over another.</summary>
    public static async Task<ExitCode> RunAsync(DraftFromRequest request, Surroundings around, CancellationToken stop)
    {
        var name = request.Name ?? Named(request.From);
        if (!SourceDraft.IsName(name))
        {
            throw new UsageException($"'{name}' is no name for a machine: use letters, digits and underscores, start with no digit, and take no word of the language; say it with --name NAME.");
        }

        var fileName = name + ".proc";
        var path = Path.Combine(around.CurrentFolder, fileName);
        if (Path.Exists(path) && !request.Diff)
        {
            throw new UsageException($"'{fileName}' is there already, and nothing was written; choose another name with --name NAME.");
        }

        var text = Read(request.From, around);
        var draft = await Task.Run(() => Draft(request.From, text, name), stop).WaitAsync(stop);
        var terminal = Terminal.For(around, request.Colour);
        if (request.Diff)
        {
            UnifiedDiff.WriteNew(terminal, fileName, draft.Text);
            return ExitCode.Findings;
        }

        stop.ThrowIfCancellationRequested();
        using PendingFiles files = new();
        files.Add(path, draft.Text);
        files.Commit(replace: false);
        terminal.WriteLine(new Piece($"wrote {fileName}: {Counted.Of(draft.Entries, IsTable(request.From) ? "row" : "step")} read; {DraftVerb.Questions(draft.Questions)}"));
        return ExitCode.Clean;
    }

    private static DraftedSource Draft(string from, string text, string name)
    {
        if (!IsTable(from))
        {
            return Notes(from, text, name);
        }

        try
        {
            return SourceDraft.OfParts(PartsFile.Read(text), name, Path.GetFileName(from));
        }
        catch (PartsListException failure)
        {
            throw new UsageException($"'{from}' {failure.Message}");
        }
    }

    private static DraftedSource Notes(string from, string text, string name) =>
        SourceDraft.OfNotes(text, name, Path.GetFileName(from)) ?? throw new UsageException($"'{from}' says nothing: write one step a line.");

    private static bool IsTable(string from) => from.EndsWith(".csv", StringComparison.OrdinalIgnoreCase);

    /// <summary>The list's own name, as far as it may be one: <c>Fan F4 notes.txt</c> is <c>fan_f4_notes</c>.</summary>
    private static string Named(string from) => SourceDraft.NameOf(Path.GetFileNameWithoutExtension(from));

    private static string Read(string from, Surroundings around)
    {
        var path = Path.GetFullPath(from, around.CurrentFolder);
        if (FileSort.IsSpecial(path))
        {
            throw new UsageException($"cannot read '{from}': it is a device, a pipe or a socket, and no file.");
        }

        var reading = SourceBytes.ReadFile(path);
        if (reading.Content is not { } text)
        {
            throw new UsageException(reading.Outcome switch
            {
                SourceOutcome.Missing => $"cannot read '{from}': there is no such file.",
                SourceOutcome.TooLarge => TooLong(from),
                SourceOutcome.NotText => $"cannot read '{from}': it is no text. {reading.Detail}",
                _ => $"cannot read '{from}': {reading.Detail}",
            });
        }

        if (text.Contains('\0', StringComparison.Ordinal))
        {
            throw new UsageException($"cannot read '{from}': it is no text, but holds bytes of zero; save the list as plain text.");
        }

        return text.Length > SourceDraft.MostCharacters ? throw new UsageException(TooLong(from))
            : string.IsNullOrWhiteSpace(text) ? throw new UsageException($"'{from}' is empty: write one step a line, or a table of parts.")
            : text;
    }

    private static string TooLong(string from) => $"'{from}' is too long for a list: at most {SourceDraft.MostCharacters / 1_000_000} million characters; split it by machines or jobs.";
}
