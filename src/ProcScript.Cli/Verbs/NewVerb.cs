using System.Text;
using ProcScript.Analysis;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary><c>new</c>: writes a file to start from, which passes a check.</summary>
internal static class NewVerb
{
    /// <summary>Writes it, and never over another.</summary>
    public static async Task<ExitCode> RunAsync(NewRequest request, Surroundings around, CancellationToken stop)
    {
        if (!IsName(request.Name))
        {
            throw new UsageException($"'{request.Name}' is no name: use letters, digits and underscores, and start with no digit.");
        }

        var fileName = request.Name + ".proc";
        var path = Path.Combine(around.CurrentFolder, fileName);
        if (Path.Exists(path))
        {
            throw new UsageException($"'{fileName}' is there already; nothing was written.");
        }

        var text = Text(request, around);
        await RefuseFindingsAsync(request, text, around, stop);
        using PendingFiles files = new();
        files.Add(path, text);
        files.Commit(replace: false);
        around.Output.WriteLine($"wrote {fileName}");
        return ExitCode.Clean;
    }

    private static bool IsName(string name) =>
        name.Length > 0 && !char.IsDigit(name[0]) && name.All(letter => letter == '_' || char.IsLetterOrDigit(letter));

    private static string Text(NewRequest request, Surroundings around) => request switch
    {
        { Kind: StartKind.Machine } => StartText.Machine(request.Name),
        { Use: { } file } => StartText.Procedure(request.Name, file.Replace('\\', '/'), MachineIn(file, request.Machine, around)),
        { Machine: { } machine } => throw new UsageException($"where is '{machine}' declared? Say so with --use FILE."),
        _ => StartText.ProcedureWithMachine(request.Name),
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
    private static async Task RefuseFindingsAsync(NewRequest request, string text, Surroundings around, CancellationToken stop)
    {
        var draft = around with { OpenInput = () => new MemoryStream(Encoding.UTF8.GetBytes(text)) };
        var library = await CheckedLibrary.JudgeAsync(new InputRequest(["-"], Root: null), _ => CheckSettings.Usual, draft, stop);
        if (library.Findings is [var first, ..])
        {
            throw new UsageException(
                $"nothing was written: a file with the name '{request.Name}' would have a finding, {first.Finding.Rule.Code}: {first.Finding.Message}.");
        }
    }
}
