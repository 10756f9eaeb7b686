using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Verbs;

/// <summary><c>format</c>: lays files out, or says which are laid out otherwise.</summary>
internal static class FormatVerb
{
    /// <summary>Reads, lays out, and writes or tells.</summary>
    public static ExitCode Run(FormatRequest request, Surroundings around, CancellationToken stop)
    {
        var selection = SourceSelection.Find(request.Input, around.CurrentFolder);
        var printsText = selection.IsForOutput(request.Mode == FormatMode.Write);
        var files = Read(selection, around, stop);
        var terminal = Terminal.For(printsText ? around with { Output = around.Error } : around, request.Colour);
        var paths = new ScreenPaths(selection, around.CurrentFolder);
        PrintFaults(files, terminal, paths);
        if (printsText)
        {
            around.Output.Write(files[0].Formatted ?? "");
            return ExitCodeOf(files, fails: false);
        }

        var changed = files.Where(file => file.IsChanged).ToList();
        if (request.Mode == FormatMode.Write)
        {
            Write(changed, selection);
        }

        foreach (var file in changed)
        {
            Tell(file, request.Mode, terminal, paths);
        }

        terminal.WriteLine(new Piece(Summary(files, changed.Count, request.Mode)));
        return ExitCodeOf(files, fails: request.Mode != FormatMode.Write && changed.Count > 0);
    }

    private static List<FormattedFile> Read(SourceSelection selection, Surroundings around, CancellationToken stop)
    {
        DiskSourceStore store = new(selection, around.OpenInput);
        var files = new List<FormattedFile>();
        foreach (var path in selection.Paths)
        {
            stop.ThrowIfCancellationRequested();
            var reading = store.Read(path);
            var tree = SyntaxTree.Parse(new SourceText(path, reading.Content ?? ""), stop);
            files.Add(new FormattedFile(tree, reading.Content is null ? null : Formatter.Format(tree), reading));
        }

        store.RefuseUnreadable();
        return files;
    }

    private static void Write(List<FormattedFile> changed, SourceSelection selection)
    {
        using PendingFiles pending = new();
        foreach (var file in changed)
        {
            var text = file.Tree.Text;
            pending.Replace(Path.Combine(selection.Root, text.Path), text.Path, text.Content, file.Formatted!);
        }

        pending.Commit(replace: true);
    }

    private static void PrintFaults(List<FormattedFile> files, Terminal terminal, ScreenPaths paths)
    {
        var texts = files.ToDictionary(file => file.Tree.Text.Path, file => file.Tree.Text, StringComparer.Ordinal);
        FindingPrinter printer = new(terminal, texts.GetValueOrDefault, paths);
        foreach (var file in files.Where(file => file.Formatted is null))
        {
            foreach (var finding in file.Tree.Findings)
            {
                printer.Print(new Analysis.ReportedFinding(finding, finding.Rule.DefaultSeverity));
            }

            terminal.WriteLine(new Piece($"left alone: {paths.Of(file.Tree.Text.Path)}, {Why(file.Reading)}"));
        }
    }

    private static string Why(SourceReading reading) => reading.Outcome switch
    {
        SourceOutcome.Read => "whose text has errors",
        SourceOutcome.TooLarge => "which is too large",
        _ => $"which is no text. {reading.Detail}",
    };

    private static void Tell(FormattedFile file, FormatMode mode, Terminal terminal, ScreenPaths paths)
    {
        if (mode != FormatMode.Diff)
        {
            var path = paths.Of(file.Tree.Text.Path);
            terminal.WriteLine(new Piece(mode == FormatMode.Write ? $"formatted {path}" : $"not laid out: {path}"));
            return;
        }

        UnifiedDiff.Write(terminal, paths, file.Tree.Text.Path, file.Tree.Text.Content, file.Formatted!);
    }

    private static string Summary(List<FormattedFile> files, int changed, FormatMode mode)
    {
        var left = files.Count(file => file.Formatted is null);
        var what = (changed, mode) switch
        {
            (0, _) => $"{Counted.Of(files.Count - left, "file")} laid out already",
            (_, FormatMode.Write) => $"formatted {changed} of {Counted.Of(files.Count, "file")}",
            _ => $"{changed} of {Counted.Of(files.Count, "file")} not laid out",
        };
        return left == 0 ? what : $"{what}, {left} left alone";
    }

    private static ExitCode ExitCodeOf(List<FormattedFile> files, bool fails) =>
        fails || files.Exists(file => file.Formatted is null) ? ExitCode.Findings : ExitCode.Clean;

    private sealed record FormattedFile(SyntaxTree Tree, string? Formatted, SourceReading Reading)
    {
        public bool IsChanged => Formatted is not null && Formatted != Tree.Text.Content;
    }
}
