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

    /// <summary>Why facts can be lost, what there is to do about it first.</summary>
    private static readonly (SurvivalReason Reason, string Title)[] Reasons =
    [
        (SurvivalReason.PackOnly, "facts whose loss leaves every proof and changes a pack: expect what it should say"),
        (SurvivalReason.NeverAsked, "facts that no step of a job asks for"),
        (SurvivalReason.AskedElsewhere, "facts for which another step asks, too"),
        (SurvivalReason.NamedUntouched, "facts about what stays in place in every job"),
        (SurvivalReason.ItemUntouched, "facts of items that no job touches"),
    ];

    /// <summary>Prints them.</summary>
    public static void Print(AuditReport audit, Terminal terminal, ScreenPaths paths)
    {
        foreach (var machine in audit.Tried.GroupBy(tried => tried.Mistake.Machine, StringComparer.Ordinal))
        {
            var unnoticed = machine.Where(tried => !tried.IsNoticed).ToList();
            terminal.WriteLine(new Piece($"machine {machine.Key}", Ink.Strong), new Piece($": {Share(machine)}"));
            foreach (var (reason, title) in Reasons)
            {
                Section(title, [.. unnoticed.Where(tried => !tried.Mistake.InProcedure && tried.Survival!.Reason == reason)]);
            }

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
            foreach (var tried in mistakes)
            {
                var mistake = tried.Mistake;
                var place = string.Create(CultureInfo.InvariantCulture, $"{PrintableText.Of(paths.Of(mistake.Place.Path))}:{mistake.Line}");
                terminal.WriteLine(new Piece($"    {place}: "), new Piece(PrintableText.Of(mistake.Words), Ink.Strong), new Piece($"{What(mistake)}{Changes(tried)}{By(tried)}"));
            }
        }
    }

    private static string Changes(TriedMistake tried)
    {
        if (tried.Packs.IsEmpty)
        {
            return "";
        }

        var packs = tried.Packs.Length > MostNamed ? $"{Counted.Of(tried.Packs.Length, "pack")}, {tried.Packs[0]} among them" : string.Join(", ", tried.Packs);
        return $" (changes {string.Join(", ", tried.Survival!.PackParts.Select(Apart))} of {packs})";
    }

    private static string By(TriedMistake tried) => tried.Survival!.By.Length == 0 ? "" : $" (so does '{PrintableText.Of(tried.Survival.By)}')";

    /// <summary>The name of a member in words: <c>toolChanges</c> as 'tool changes'.</summary>
    private static string Apart(string name) => string.Concat(name.Select(letter => char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : letter.ToString()));

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
