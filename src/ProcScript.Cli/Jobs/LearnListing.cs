using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Learning;

namespace ProcScript.Cli.Jobs;

/// <summary>Lists what jobs teach, for people: each suggestion with its place, what is written, what was seen, and what to write.</summary>
/// <param name="report">What they teach.</param>
/// <param name="request">What was asked.</param>
/// <param name="paths">How files are named to the user.</param>
internal sealed class LearnListing(LearnReport report, LearnVerbRequest request, ScreenPaths paths)
{
    private const int MostNamed = 12;

    /// <summary>Prints it.</summary>
    public void Print(Terminal terminal)
    {
        var told = report.Document;
        terminal.WriteLine(new Piece(PrintableText.Of(Jobs(told))));
        terminal.WriteLine(new Piece($"{told.Measured} of {Counted.Of(told.Ticked, "ticked step")} measured"));
        if (!told.NotMeasured.IsEmpty)
        {
            terminal.WriteLine(new Piece($"not measured: {string.Join("; ", told.NotMeasured.Select(reason => $"{reason.Count} {reason.Because}"))}"));
        }

        terminal.WriteLine();
        foreach (var suggestion in told.Suggestions)
        {
            Print(suggestion, terminal);
        }

        if (request.Diff)
        {
            foreach (var file in report.Texts.Files)
            {
                UnifiedDiff.Write(terminal, paths, file.Path, file.Before, file.After);
            }
        }

        foreach (var line in Named("no longer in the library", told.Gone).Concat(Named("left out", told.LeftOut)))
        {
            terminal.WriteLine(new Piece(PrintableText.Of(line), Ink.Warning));
        }

        terminal.WriteLine(new Piece(Summary(told)));
    }

    private void Print(Suggestion suggestion, Terminal terminal)
    {
        var diffs = report.Fixes.TryGetValue(suggestion.Number, out var fix) ? FixDiff.Of(fix, path => report.Texts.Before.TextOf(path)).ToList() : [];
        var gutter = new Gutter(Math.Max(suggestion.Line, diffs.Select(diff => diff.LastLine).DefaultIfEmpty().Max()));
        terminal.WriteLine(new Piece($"{suggestion.Sort} {suggestion.Number}", Ink.Hint), new Piece($": {PrintableText.Of(suggestion.About)}", Ink.Strong));
        terminal.WriteLine(gutter.Arrow("-->"), new Piece($"{paths.Of(suggestion.Path)}:{suggestion.Line}:{suggestion.Column}"));
        Note("written", suggestion.Written);
        Note("seen", suggestion.Observed);
        Note("write", suggestion.OfRefit ? $"refit {{ {suggestion.Write} }}" : suggestion.Write);
        Note("by hand", suggestion.ByHand);
        foreach (var line in request.Diff ? [] : diffs.SelectMany(diff => diff.Lines))
        {
            var ink = line.IsNew ? Ink.Added : Ink.Removed;
            terminal.WriteLine(gutter.Number(line.Number, line.IsNew ? "+" : "-", ink), new Piece(PrintableText.Of(line.Text), ink));
        }

        terminal.WriteLine();

        void Note(string word, string text)
        {
            if (text.Length > 0)
            {
                terminal.WriteLine(gutter.Note, new Piece($"{PrintableText.Of(word)}: ", Ink.Strong), new Piece(PrintableText.Of(text)));
            }
        }
    }

    private static string Jobs(LearnDocument told) => told.Jobs.IsEmpty
        ? "no job"
        : $"{Counted.Of(told.Jobs.Sum(jobs => jobs.Count), "job")}, {told.Jobs.Sum(jobs => jobs.Closed)} closed: {string.Join(", ", told.Jobs.Select(jobs => $"{jobs.Count} {jobs.Procedure}"))}";

    private static IEnumerable<string> Named(string what, IReadOnlyCollection<string> lines) =>
    [
        .. lines.Take(MostNamed).Select(line => $"{what}: {line}"),
        .. lines.Count > MostNamed ? [$"{what}: {lines.Count - MostNamed} more; --format json names all"] : (IEnumerable<string>)[],
    ];

    private string Summary(LearnDocument told)
    {
        var byHand = told.Suggestions.Length - report.Fixes.Count;
        var hand = byHand == 0 ? "" : $", {byHand} by hand";
        return told.Suggestions.IsEmpty ? $"nothing to suggest: no {(told.AtLeast == 1 ? "job tells" : $"{told.AtLeast} jobs tell")} otherwise than the library"
            : report.Fixes.IsEmpty ? $"{Counted.Of(told.Suggestions.Length, "suggestion")} to carry out by hand"
            : request.Apply ? $"wrote {Counted.Of(report.Fixes.Count, "suggestion")} into {Counted.Of(report.Texts.Files.Length, "file")}{hand}; the packs of these files say otherwise now: 'procscript diff' tells how"
            : $"{Counted.Of(told.Suggestions.Length, "suggestion")}{hand}; nothing is written: --apply writes what can be, --only SORT a part of it";
    }
}
