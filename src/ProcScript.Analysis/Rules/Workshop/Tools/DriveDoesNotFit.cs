using System.Collections.Immutable;
using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Rules.Workshop.Tools;

/// <summary>The tool for a head has a size that no head of the thread has, or another than a second tool for it.</summary>
public sealed class DriveDoesNotFit : KindRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5072", "drive-does-not-fit", "The size of a tool suits no head of the thread", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "By their titles `drive` is a tool for hexagons (socket, spanner, wrench; hexagon bit or key), and its size is that of no head "
            + "of the thread: neither of today's standard hexagon, nor of the one before 1982, nor of flange bolts, small or heavy heads and "
            + "nuts; of a key, neither cap, button and countersunk heads nor set screws. Or `drive` and `tool` are two such tools of one sort "
            + "and differ in size. Today's metric heads M4 to M16 and inch heads to 1/2 in were read in tables, the others are from memory. "
            + "Other drives, tools without a size, and threads without a known head are passed over.",
        Why: "The tool list is what people carry to the machine. A socket that does not fit means a walk, and one that nearly fits a rounded "
            + "head. Mostly the thread or the tool is a slip. There are odd heads as well: then allow the finding and say which.",
        Wrong: """
            tool socket_19 "19 mm socket" { size 19 mm }
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  grade 8.8  drive socket_19  torque 22 ± 2 N.m }
            """,
        Right: """
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(Kind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        if (HexagonTool.Of(kind.Drive) is not { } drive)
        {
            return [];
        }

        // One finding a kind: where the drive fits no head, another tool that differs from it may well be the right one.
        return (OfThread(kind, drive) ?? OfTools(kind, drive)) is { } finding ? [finding] : [];
    }

    private static Finding? OfThread(Kind kind, HexagonTool drive)
    {
        if (ThreadDesignation.Parse(kind.Thread) is not { } thread)
        {
            return null;
        }

        var heads = drive.IsKey ? WidthsAcrossFlats.Sockets(thread) : WidthsAcrossFlats.Hexagons(thread);
        return heads.IsEmpty || heads.Any(head => WidthsAcrossFlats.Fits(drive.Millimetres, head))
            ? null
            : At(
                kind,
                drive.Tool,
                $"`{kind.Name}` has a drive that fits no head of its thread: {drive.Tool.Title} on {kind.Thread}, whose "
                    + $"{(drive.IsKey ? "sockets take" : "hexagons are")} {Sizes(heads, thread)}",
                "compare thread and tool with the bolt; for an odd head allow the finding and say which");
    }

    private static Finding? OfTools(Kind kind, HexagonTool drive) =>
        kind.Tools.Select(HexagonTool.Of).FirstOrDefault(tool =>
            tool is not null
            && tool.IsKey == drive.IsKey
            && !WidthsAcrossFlats.Fits(tool.Millimetres, drive.Millimetres)
            && !WidthsAcrossFlats.Fits(drive.Millimetres, tool.Millimetres)) is { } other
            ? At(
                kind,
                other.Tool,
                $"`{kind.Name}` has two tools of different sizes for one head: {drive.Tool.Title} and {other.Tool.Title}",
                "keep the one that fits; a nut of another size at the other end is worth a word in the title")
            : null;

    private static Finding At(Kind kind, Tool tool, string message, string help) => new(Id, message, kind.Declared, "has this drive")
    {
        Related = [new LabeledSpan(tool.Declared, $"{tool.Size!.Print()} by its size")],
        Help = help,
    };

    private static string Sizes(ImmutableArray<double> heads, ThreadDesignation thread)
    {
        var unit = thread.System == ThreadSystem.Metric ? Units.Millimetre : Units.Inch;
        return ItemPhrases.List(heads.Select(head =>
        {
            var size = Math.Round(head / 1000 / unit.Factor, 6);
            return new Quantity(size, size, size, unit, QuantityForm.Plain).Print();
        }));
    }
}
