using System.Collections.Immutable;
using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Drafting.Parts;
using static ProcScript.Analysis.Tests.Drafting.Drafting;

namespace ProcScript.Analysis.Tests.Drafting;

public sealed class PartsTests
{
    [Fact]
    public void A_list_of_parts_makes_a_machine()
    {
        var drafted = Drafted(
            "Pos|Description|Qty|Weight (kg)|Held by|Torque (Nm)|Tool|Behind|In|Remarks",
            "1|Front guard|1|1.2|6x M5x12 bolts|5|8 mm socket|||",
            "2|Fan wheel|1||1 M8 nut|18|13 mm socket|front guard||look at it",
            "3|Motor|1|4.5|4 M5x12 bolts|5||fan wheel||",
            "4|Capacitor|1||||||Motor|",
            "5|Bolt, M6x20|4||||||Base plate|",
            "6|Base plate|1|9||||||");

        Assert.Contains("part front_guard \"Front guard\" {\n    // No. 1 of the list\n    mass 1.2 kg\n    held by 6 m5x12 as front_guard_bolts { torque 5 N.m  tool socket_8 }\n", drafted, StringComparison.Ordinal);
        Assert.Contains("    behind front_guard\n    held by 1 m8 as fan_wheel_nut { torque 18 N.m  tool socket_13 }\n", drafted, StringComparison.Ordinal);
        Assert.Contains("    part capacitor \"Capacitor\" {\n", drafted, StringComparison.Ordinal);
        Assert.Contains("held by 4 m6x20 as base_plate_bolt\n", drafted, StringComparison.Ordinal);
        Assert.Contains("    // look at it\n", drafted, StringComparison.Ordinal);
        AssertSettled(drafted);
        Assert.Empty(Errors(drafted));
    }

    [Theory]
    [InlineData("qty", "2", "has no column that names the parts")]
    [InlineData("part|name", "x|y", "says \"name\" and has another column that means the same")]
    [InlineData("part|qty", "x|some", "has \"some\" for a count in line 2")]
    [InlineData("part|qty", "|2", "names no part in line 2")]
    [InlineData("part|qty", "", "has headings and no rows")]
    public void A_list_that_cannot_be_read_is_told_why(string headings, string row, string message)
    {
        var failure = Assert.Throws<PartsListException>(() => Drafted(row.Length == 0 ? [headings] : [headings, row]));

        Assert.StartsWith(message, failure.Message, StringComparison.Ordinal);
    }

    private static string Drafted(params string[] lines)
    {
        var rows = lines.Index().Skip(1).Select(row => new PartsRow(row.Index + 1, [.. row.Item.Split('|')])).ToImmutableArray();
        return SourceDraft.OfParts(new PartsTable([.. lines[0].Split('|')], rows), "m", "parts.csv").Text;
    }
}
