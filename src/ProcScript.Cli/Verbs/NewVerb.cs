using System.Text;
using ProcScript.Analysis;
using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary><c>new</c>: writes a file to start from, which passes a check.</summary>
internal static class NewVerb
{
    /// <summary>Writes it, and never over another. The first file of a library gets the settings beside it.</summary>
    public static async Task<ExitCode> RunAsync(NewRequest request, Surroundings around, CancellationToken stop)
    {
        var (name, title) = Named(request.Name);
        var fileName = name + ".proc";
        var path = Path.Combine(around.CurrentFolder, fileName);
        if (Path.Exists(path))
        {
            throw new UsageException($"'{fileName}' is there already; nothing was written.");
        }

        var text = Text(request, name, title, around);
        await RefuseFindingsAsync(name, text, around, stop);
        using PendingFiles files = new();
        files.Add(path, text);
        var settings = Path.Combine(around.CurrentFolder, SettingsKeys.FileName);
        var beginsLibrary = IsOwnLibrary(around.CurrentFolder) && !LibraryFolder.IsThere(settings);
        if (beginsLibrary)
        {
            files.Add(settings, StartSettings.Text());
        }

        files.Commit(replace: false);
        around.Output.WriteLine($"wrote {fileName}");
        if (beginsLibrary)
        {
            around.Output.WriteLine($"wrote {SettingsKeys.FileName}");
        }

        return ExitCode.Clean;
    }

    /// <summary>Whether the folder is a library of its own; within another one, that one's settings hold.</summary>
    private static bool IsOwnLibrary(string folder) => LibraryFolder.Find([folder], folder) == folder;

    /// <summary>The name and the title: what is no name is the title, and a name is made of it.</summary>
    private static (string Name, string Title) Named(string typed)
    {
        if (IsName(typed))
        {
            var words = typed.Replace('_', ' ').Trim();
            return (typed, words.Length == 0 ? typed : char.ToUpperInvariant(words[0]) + words[1..]);
        }

        var title = typed.Trim();
        if (!title.Any(char.IsLetterOrDigit) || title.IndexOfAny(['/', '\\']) >= 0)
        {
            throw new UsageException($"'{typed}' is no name: use letters, digits and underscores, and start with no digit; or write the title, such as \"Harrow H2\".");
        }

        return (SourceDraft.NameOf(title), title);
    }

    private static bool IsName(string name) =>
        name.Length > 0 && !char.IsDigit(name[0]) && name.All(letter => letter == '_' || char.IsLetterOrDigit(letter));

    private static string Text(NewRequest request, string name, string title, Surroundings around) => request switch
    {
        { Kind: StartKind.Machine } => StartText.Machine(name, title),
        { Use: { } file } => StartText.Procedure(name, title, file.Replace('\\', '/'), MachineIn(file, request.Machine, around)),
        { Machine: { } machine } => throw new UsageException($"where is '{machine}' declared? Say so with --use FILE."),
        _ => StartText.ProcedureWithMachine(name, title),
    };

    private static string MachineIn(string file, string? wanted, Surroundings around)
    {
        var selection = SourceSelection.Find(new InputRequest([file], Root: null), around.CurrentFolder);
        var report = LibraryCheck.Run(new DiskSourceStore(selection, around.OpenInput));
        var machines = report.Library.Machines
            .Where(machine => wanted is null ? selection.IsGiven(machine.Declared.Path) : machine.Name == wanted)
            .Select(machine => machine.Name)
            .Distinct(StringComparer.Ordinal)
            .ToList();
        return machines switch
        {
            [var machine] => machine,
            [] => throw new UsageException(wanted is null ? $"'{file}' declares no machine." : $"'{file}' knows no machine '{wanted}'."),
            _ => throw new UsageException($"'{file}' declares {string.Join(", ", machines)}: choose one with --on MACHINE."),
        };
    }

    /// <summary>A name may be a word of the language, or one that the machine's file uses already: the check knows.</summary>
    private static async Task RefuseFindingsAsync(string name, string text, Surroundings around, CancellationToken stop)
    {
        var draft = around with { OpenInput = () => new MemoryStream(Encoding.UTF8.GetBytes(text)) };
        var library = await CheckedLibrary.JudgeAsync(new InputRequest(["-"], Root: null), _ => CheckSettings.Usual, draft, stop);
        if (library.Findings is [var first, ..])
        {
            throw new UsageException(
                $"nothing was written: a file with the name '{name}' would have a finding, {first.Finding.Rule.Code}: {first.Finding.Message}.");
        }
    }
}
