using ProcScript.Analysis;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Output;

/// <summary>Prints findings for people: what, where with the source, and how to mend it.</summary>
/// <param name="terminal">Where to.</param>
/// <param name="sources">The text of a file of the library, or null.</param>
/// <param name="paths">How files are named to the user.</param>
internal sealed class FindingPrinter(Terminal terminal, Func<string, SourceText?> sources, ScreenPaths paths)
{
    /// <summary>Whether long lists are printed in full.</summary>
    public bool NamesAll { get; init; }

    /// <summary>Prints one finding and an empty line.</summary>
    public void Print(ReportedFinding reported)
    {
        var finding = NamesAll ? reported.Finding : reported.Finding.Shortened();
        var ink = InkOf(reported.Severity);
        var excerpts = Excerpt.Of(finding, ink, sources);
        var fixes = finding.Fixes.Select(fix => (Fix: fix, Diffs: FixDiff.Of(fix, sources).ToList())).ToList();
        var gutter = new Gutter(Math.Max(
            excerpts.Max(excerpt => excerpt.LastLine),
            fixes.SelectMany(fix => fix.Diffs).Select(diff => diff.LastLine).DefaultIfEmpty().Max()));

        terminal.WriteLine(
            new Piece($"{SeverityWords.Of(reported.Severity)} {finding.Rule.Code} {finding.Rule.Name}", ink),
            new Piece(": " + PrintableText.Of(finding.Message), Ink.Strong));
        Print(excerpts, gutter);
        PrintNote("help", finding.Help, gutter);
        foreach (var (fix, diffs) in fixes)
        {
            PrintNote("fix", fix.Title + Grade(fix.Grade), gutter);
            Print(diffs, finding.Primary.Path, gutter);
        }

        terminal.WriteLine();
    }

    private void Print(IReadOnlyList<Excerpt> excerpts, Gutter gutter)
    {
        for (var i = 0; i < excerpts.Count; i++)
        {
            var excerpt = excerpts[i];
            if (i > 0)
            {
                terminal.WriteLine(gutter.Bar);
            }

            terminal.WriteLine(gutter.Arrow(i == 0 ? "-->" : ":::"), new Piece(PrintableText.Of(paths.Of(excerpt.Path)) + excerpt.Position()));
            if (i == 0 && excerpt.LastLine > 0)
            {
                terminal.WriteLine(gutter.Bar);
            }

            excerpt.Write(terminal, gutter);
        }
    }

    private void Print(List<FixDiff> diffs, string mainPath, Gutter gutter)
    {
        foreach (var diff in diffs.Where(diff => !diff.Lines.IsEmpty))
        {
            if (diff.Path != mainPath)
            {
                terminal.WriteLine(gutter.Arrow(":::"), new Piece(PrintableText.Of(paths.Of(diff.Path))));
            }

            foreach (var line in diff.Lines)
            {
                var ink = line.IsNew ? Ink.Added : Ink.Removed;
                terminal.WriteLine(gutter.Number(line.Number, line.IsNew ? "+" : "-", ink), new Piece(PrintableText.Of(line.Text), ink));
            }
        }
    }

    private void PrintNote(string word, string text, Gutter gutter)
    {
        if (text.Length == 0)
        {
            return;
        }

        var lines = text.ReplaceLineEndings("\n").Split('\n');
        terminal.WriteLine(gutter.Note, new Piece(word + ": ", Ink.Strong), new Piece(PrintableText.Of(lines[0])));
        foreach (var line in lines.Skip(1))
        {
            terminal.WriteLine(gutter.Blank, new Piece(new string(' ', word.Length + 2) + PrintableText.Of(line)));
        }
    }

    private static Ink InkOf(Severity severity) => severity switch
    {
        Severity.Error => Ink.Error,
        Severity.Warning => Ink.Warning,
        _ => Ink.Hint,
    };

    private static string Grade(FixGrade grade) => grade switch
    {
        FixGrade.Safe => " (safe)",
        FixGrade.NeedsLook => " (needs a look)",
        _ => "",
    };
}
