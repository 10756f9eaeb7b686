using System.Globalization;
using ProcScript.Analysis.Auditing;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary>The mistakes that nothing notices, for people: machine by machine, its facts before its procedures.</summary>
internal static class AuditListing
{
    private const int MostNamed = 2;

    /// <summary>Prints them.</summary>
    public static void Print(AuditReport audit, Terminal terminal, ScreenPaths paths)
    {
        foreach (var machine in audit.Tried.GroupBy(tried => tried.Mistake.Machine, StringComparer.Ordinal))
        {
            var unnoticed = machine.Where(tried => !tried.IsNoticed).ToList();
            terminal.WriteLine(new Piece($"machine {machine.Key}", Ink.Strong), new Piece($": {Share(machine)}"));
            Section("facts that no procedure leans on", [.. unnoticed.Where(tried => !tried.Mistake.InProcedure && tried.Packs.IsEmpty)]);
            Section("facts whose loss changes a pack without a word", [.. unnoticed.Where(tried => !tried.Mistake.InProcedure && !tried.Packs.IsEmpty)]);
            foreach (var procedure in machine.Where(tried => tried.Mistake.InProcedure).GroupBy(tried => tried.Mistake.Owner, StringComparer.Ordinal))
            {
                var missed = procedure.Where(tried => !tried.IsNoticed).ToList();
                if (missed.Count > 0)
                {
                    Section($"procedure {procedure.Key}: {Share(procedure)}", missed);
                }
            }
        }

        terminal.WriteLine(new Piece(Summary(audit)));

        void Section(string title, IReadOnlyCollection<TriedMistake> mistakes)
        {
            if (mistakes.Count == 0)
            {
                return;
            }

            terminal.WriteLine(new Piece($"  {title}"));
            foreach (var (mistake, _, _, _, packs) in mistakes)
            {
                var place = string.Create(CultureInfo.InvariantCulture, $"{PrintableText.Of(paths.Of(mistake.Place.Path))}:{mistake.Line}");
                var changed = packs.IsEmpty ? "" : $" (changes {(packs.Length > MostNamed ? $"{Counted.Of(packs.Length, "pack")}, {packs[0]} among them" : string.Join(", ", packs))})";
                terminal.WriteLine(new Piece($"    {place}: "), new Piece(PrintableText.Of(mistake.Words), Ink.Strong), new Piece($"{What(mistake)}{changed}"));
            }
        }
    }

    /// <summary>The last line.</summary>
    public static string Summary(AuditReport audit) => audit.Tried.IsEmpty
        ? "no mistake to try"
        : $"{Counted.Of(audit.Tried.Length, "mistake")} tried: {Noticed(audit)}, {audit.Unnoticed.Count()} unnoticed";

    private static string Noticed(AuditReport audit) => string.Join(", ", new[] { Severity.Error, Severity.Warning, Severity.Hint }
        .Select(severity => (Word: SeverityWords.Of(severity), Count: audit.Count(severity)))
        .Where(one => one.Count > 0)
        .Select(one => $"{one.Count} {(one.Word == "error" ? "noticed as an error" : $"as a {one.Word}")}")
        .Concat(audit.Unexpected == 0 ? [] : [$"{audit.Unexpected} by what the library expects"])
        .DefaultIfEmpty("none noticed"));

    private static string What(Mistake mistake) => mistake.Sort == MistakeSort.OtherPlace ? "" : " left out";

    private static string Share(IEnumerable<TriedMistake> tried)
    {
        var all = tried.ToList();
        return string.Create(CultureInfo.InvariantCulture, $"{all.Count(one => one.IsNoticed)} of {Counted.Of(all.Count, "mistake")} noticed");
    }
}
