using System.Text.Json;
using ProcScript.Analysis;
using ProcScript.Analysis.Machines.Documents;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary><c>model</c>: writes machines as data.</summary>
internal static class ModelVerb
{
    /// <summary>Reads and writes.</summary>
    public static async Task<ExitCode> RunAsync(ModelRequest request, Surroundings around, CancellationToken stop)
    {
        DiskSourceStore store = new(SourceSelection.Find(request.Input, around.CurrentFolder), around.OpenInput);
        // Reading a standard input hears of no stop; it writes nothing, and may be left behind.
        var library = await Task.Run(() => LibraryBinder.Bind(store, stop), stop).WaitAsync(stop);
        var machines = library.Machines.Where(machine => store.Selection.IsGiven(machine.Declared.Path)).ToList();
        if (library.Findings.Any(IsError) && (machines.Count == 0 || machines.Exists(machine => machine.HasErrors)))
        {
            PrintErrors(library, store.Selection, around, request.Colour);
            around.Error.WriteLine("procscript: the text has errors: nothing written.");
            return store.HasUnreadableInput ? ExitCode.Usage : ExitCode.Findings;
        }

        var document = ModelBuilder.Build(Choose(machines, request));
        var text = LogCommands.DisarmJson(JsonSerializer.Serialize(document, ModelJson.Published.ModelDocument)) + "\n";
        if (request.Output is { } output && !OutputFile.IsOutput(output))
        {
            OutputFile.Write(output, text, store, around).WriteLine($"wrote {output}: {Counted.Of(document.Machines.Select(machine => machine.Name).Distinct().Count(), "machine")}");
        }
        else
        {
            around.Output.Write(text);
        }

        return ExitCode.Clean;
    }

    /// <summary>The machines that are asked for.</summary>
    /// <exception cref="UsageException">There is none such.</exception>
    private static List<Machine> Choose(List<Machine> machines, ModelRequest request)
    {
        var named = machines.Where(machine => request.Machine is null || machine.Name == request.Machine).ToList();
        if (named.Count == 0)
        {
            throw new UsageException(request.Machine is null
                ? "there is no machine to write."
                : $"there is no machine '{request.Machine}'; there are: {Listed(machines.Select(machine => machine.Name))}.");
        }

        if (request.With is not { } with)
        {
            return named;
        }

        var options = named.SelectMany(machine => machine.Options).Select(option => option.Name).ToHashSet(StringComparer.Ordinal);
        if (with.FirstOrDefault(option => !options.Contains(option)) is { } unknown)
        {
            throw new UsageException(options.Count == 0
                ? $"there is no option '{unknown}': these machines have no options."
                : $"there is no option '{unknown}'; there are: {Listed(options)}.");
        }

        var chosen = named.Where(machine => with.ToHashSet(StringComparer.Ordinal).SetEquals(machine.With.Select(option => option.Name))).ToList();
        return chosen.Count > 0
            ? chosen
            : throw new UsageException($"no machine was read with exactly {string.Join(", ", with)}: no procedure makes a difference of that.");
    }

    private static void PrintErrors(Library library, SourceSelection selection, Surroundings around, ColourChoice colour)
    {
        FindingPrinter printer = new(
            Terminal.For(around with { Output = around.Error }, colour),
            path => library.Trees.GetValueOrDefault(path)?.Text,
            new ScreenPaths(selection, around.CurrentFolder));
        foreach (var finding in library.Findings.Where(IsError))
        {
            printer.Print(new ReportedFinding(finding, Severity.Error));
        }
    }

    private static bool IsError(Finding finding) => finding.Rule.DefaultSeverity == Severity.Error;

    private static string Listed(IEnumerable<string> names) =>
        string.Join(", ", names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
}
