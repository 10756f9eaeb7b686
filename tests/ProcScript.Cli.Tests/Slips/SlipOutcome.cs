using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Cli.Tests.Rules;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Tests.Slips;

/// <summary>What the program says of a slip, and what its fixes come to.</summary>
/// <param name="Slip">The slip.</param>
/// <param name="Findings">The findings of the file with the slip in it.</param>
/// <param name="Rounds">The fixes that were applied, the first one of the first finding each time.</param>
/// <param name="Left">What was left to say in the end.</param>
/// <param name="End">The file in the end.</param>
internal sealed record SlipOutcome(Slip Slip, ImmutableArray<Finding> Findings, ImmutableArray<Fix> Rounds, ImmutableArray<Finding> Left, string End)
{
    /// <summary>How often a fix is applied at most; one is what a slip should take.</summary>
    private const int MostRounds = 3;

    private const string File = "fan.proc";

    /// <summary>Whether its fixes lead to a file that nothing is to be said of.</summary>
    public bool IsMended => !Rounds.IsEmpty && Left.IsEmpty;

    public string Says => string.Join("; ", Findings.Select(finding => $"{finding.Rule.Code} {finding.Message}"));

    public string Place => string.Join("; ", Findings.Select(finding => PlaceIn(Slip.Text, finding)));

    public string Fix => string.Join(", then ", Rounds.Select(fix => fix.Title));

    public string Then => Rounds.IsEmpty
        ? "no fix"
        : !Left.IsEmpty ? "left: " + string.Join("; ", Left.Select(finding => $"{finding.Rule.Code} {finding.Message}"))
        : End == SlipTable.Good ? "as it was" : "clean";

    public static SlipOutcome Of(Slip slip)
    {
        var first = LibraryOf(slip.Text);
        ImmutableArray<Finding> findings = [.. first.Check()];
        var (library, left) = (first, findings);
        var rounds = ImmutableArray.CreateBuilder<Fix>();
        while (rounds.Count < MostRounds && left.Select(FirstFix).FirstOrDefault(fix => fix is not null) is { } fix)
        {
            rounds.Add(fix);
            library = library.With(fix);
            left = [.. library.Check()];
        }

        return new SlipOutcome(slip, findings, rounds.ToImmutable(), left, library.Files[File]);
    }

    /// <summary>The lines of the file with the slip that it touches, counted from one.</summary>
    public (int First, int Last) TouchedLines => (LineOf(Slip.Start), LineOf(Slip.Start + Slip.Typed.Length));

    /// <summary>The line of the declaration, or of the block in it that has most to say, around the slip.</summary>
    public int HeadLine => LineOf(Math.Max(
        Slip.Text.LastIndexOf("\n  energy ", Slip.Start, StringComparison.Ordinal), Slip.Text.LastIndexOf("\n  goal ", Slip.Start, StringComparison.Ordinal)) + 1);

    /// <summary>The line that a finding points at.</summary>
    public int LineOf(Finding finding) => LineOf(finding.Primary.Span.Start);

    /// <summary>Every fix of the slip, each with the number of findings that are left by it alone.</summary>
    public IEnumerable<(Fix Fix, int Left)> EachFix() =>
        from finding in Findings
        from fix in finding.Fixes
        where Library.IsApplied(fix)
        select (fix, LibraryOf(Slip.Text).With(fix).Check().Count());

    private int LineOf(int position) => Slip.Text.AsSpan(0, Math.Min(position, Slip.Text.Length)).Count('\n') + 1;

    private static Fix? FirstFix(Finding finding) => finding.Fixes.FirstOrDefault(Library.IsApplied);

    private static Library LibraryOf(string text)
    {
        var files = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal).Add(File, text);
        return new Library(files, new MemorySourceStore(files));
    }

    private static string PlaceIn(string text, Finding finding)
    {
        var span = finding.Primary.Span;
        SourceText source = new(File, text);
        var line = source.LineAt(span.Start);
        return string.Create(CultureInfo.InvariantCulture, $"{line + 1}:{span.Start - source.LineSpan(line).Start + 1} `{text.Substring(span.Start, span.Length)}`");
    }
}
