namespace ProcScript.Cli.Tests.Slips;

/// <summary>The usual slips, one a row, with what the program makes of each: the table of <c>slips.md</c>.</summary>
internal static class SlipTable
{
    /// <summary>How many cells of a row are written by hand; the others say what comes of it.</summary>
    private const int Written = 2;

    /// <summary>What stands in a cell for what a table cannot show.</summary>
    private static readonly (string Shown, string Meant)[] Signs = [("⏎", "\n"), ("␣", "\u202F")];

    private static readonly string Folder = Path.Combine(Checkout.Root, "tests", "ProcScript.Cli.Tests", "Slips");

    public static string Table { get; } = Path.Combine(Folder, "slips.md");

    /// <summary>The clean file that the slips are made in.</summary>
    public static string Good { get; } = File.ReadAllText(Path.Combine(Folder, "good.proc")).ReplaceLineEndings("\n");

    public static IReadOnlyList<Slip> All { get; } =
        [.. File.ReadLines(Table).Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(Read)];

    /// <summary>The table with its cells filled in anew.</summary>
    public static string Filled(IReadOnlyList<SlipOutcome> outcomes)
    {
        var row = 0;
        return string.Concat(File.ReadLines(Table).Select(line => (line.StartsWith("| `", StringComparison.Ordinal) ? Row(outcomes[row++]) : line) + "\n"));
    }

    private static Slip Read(string line)
    {
        var cells = line.Trim('|').Split(" | ").Select(cell => cell.Trim()).Take(Written).Select(cell => Meant(cell[1..^1])).ToArray();
        return new Slip(cells[0], cells[1]);
    }

    private static string Row(SlipOutcome outcome) =>
        $"| `{Shown(outcome.Slip.Good)}` | `{Shown(outcome.Slip.Typed)}` | {Shown(outcome.Says)} | {Shown(outcome.Place)} | {Shown(outcome.Fix)} | {Shown(outcome.Then)} |";

    private static string Meant(string cell) => Signs.Aggregate(cell, (text, sign) => text.Replace(sign.Shown, sign.Meant, StringComparison.Ordinal));

    private static string Shown(string text) => Signs.Aggregate(text, (cell, sign) => cell.Replace(sign.Meant, sign.Shown, StringComparison.Ordinal));
}

/// <summary>One slip of the fingers.</summary>
/// <param name="Good">What stands in the clean file, at its first place.</param>
/// <param name="Typed">What was typed for it.</param>
internal sealed record Slip(string Good, string Typed)
{
    public int Start => SlipTable.Good.IndexOf(Good, StringComparison.Ordinal);

    /// <summary>The file with the slip in it.</summary>
    public string Text => SlipTable.Good[..Start] + Typed + SlipTable.Good[(Start + Good.Length)..];

    /// <summary>Whether a line was left out, and nothing typed for it.</summary>
    public bool IsLeftOut => string.IsNullOrWhiteSpace(Typed);

    public override string ToString() => Typed;
}
