using CsCheck;
using ProcScript.Analysis.Naming;
using ProcScript.Analysis.Refactoring;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Naming;

/// <summary>The naming of the shop: what is written otherwise is found, and renamed wherever it stands.</summary>
public sealed class ShopNamingTests
{
    private const string Fan =
        """
        tool Key "key"
        fastener bolt "bolt" { drive Key }

        machine fan "Fan" {
          energy mains "mains" { isolate "Pull the plug."  verify "It stays dark."  restore "Push the plug in." }
          part frontGuard "front guard" { mass 1 kg  held by 4 bolt as GuardBolts }
          each side in left, right {
            part foot[side] "{side} foot" { mass 1 kg  behind frontGuard  held by 2 bolt as footBolts[side] { needs mains isolated } }
          }
        }

        """;

    private const string Job =
        """
        use "fan.proc"

        procedure footOff(side in left, right) "Take the {side} foot off" on fan {
          goal remove foot[side]
          stage "Guard" { undo GuardBolts  remove frontGuard }
          stage "Foot" { isolate mains  undo footBolts[side]  remove foot[side] }
          refit { fasten GuardBolts before restore mains }
        }

        """;

    private const string Settings = """{ "names": { "parts": "seat_bolts", "joints": "seat_bolts", "procedures": "seat_bolts", "catalog": "seat_bolts" } }""";

    [Theory]
    [InlineData(NameStyle.Snake, "seatBolts", "seat_bolts")]
    [InlineData(NameStyle.Snake, "SEAT_BOLTS", "seat_bolts")]
    [InlineData(NameStyle.Snake, "LHDoor", "lh_door")]
    [InlineData(NameStyle.Snake, "m8x25", "m8x25")]
    [InlineData(NameStyle.Camel, "seat_bolts", "seatBolts")]
    [InlineData(NameStyle.Camel, "m8_25", "m8_25")]
    [InlineData(NameStyle.Pascal, "seat_bolts", "SeatBolts")]
    [InlineData(NameStyle.Upper, "seatBolts", "SEAT_BOLTS")]
    [InlineData(NameStyle.Snake, "_5_16_hex", "_5_16_hex")]
    [InlineData(NameStyle.Any, "as_It_Comes", "as_It_Comes")]
    public void A_name_is_written_in_a_style(NameStyle style, string name, string expected) => Assert.Equal(expected, NameWords.In(style, name));

    [Fact]
    public void A_style_comes_to_rest() => Gen.Select(Gen.String[Gen.Char["abzABZ019_éÉ"], 1, 12], Gen.Enum<NameStyle>()).Sample(
        (name, style) =>
        {
            var once = NameWords.In(style, name);
            Assert.Equal(once, NameWords.In(style, once));
            Assert.Equal(name.Count(char.IsLetterOrDigit), once.Count(char.IsLetterOrDigit));
        },
        iter: Depth.Of(2000));

    [Fact]
    public void Every_name_that_is_written_otherwise_is_told_with_a_fix_for_all_its_uses()
    {
        var report = Check(Sources());
        var told = report.Findings.Where(reported => reported.Finding.Rule.Code == "PRC6008").Select(reported => reported.Finding).ToList();

        Assert.Equal(["Key", "frontGuard", "GuardBolts", "footBolts", "footOff"], told.Select(finding => NameAt(report, finding)));
        Assert.All(told, finding => Assert.Single(finding.Fixes));
        foreach (var finding in told)
        {
            var after = Check(Applied(Sources(), finding.Fixes[0].Edits));
            Assert.Equal(Others(report), Others(after));
            Assert.Equal(told.Count - 1, after.Findings.Count(reported => reported.Finding.Rule.Code == "PRC6008"));
        }
    }

    [Fact]
    public void All_are_renamed_at_once_and_the_library_is_judged_as_before()
    {
        var report = Check(Sources());
        var place = new TextSpan(Fan.IndexOf("frontGuard", StringComparison.Ordinal), 0);
        var change = Assert.Single(
            Refactorings.For(report, "fan.proc", place, TestContext.Current.CancellationToken), one => one.Title == "Rename 5 things as the shop names them, in all files");
        var after = Applied(Sources(), change.Edits);

        Assert.Equal(Others(report), Others(Check(after)));
        Assert.DoesNotContain(Check(after).Findings, reported => reported.Finding.Rule.Code == "PRC6008");
        Assert.Contains("behind front_guard  held by 2 bolt as foot_bolts[side]", after["fan.proc"], StringComparison.Ordinal);
        Assert.Contains("refit { fasten guard_bolts before restore mains }", after["job.proc"], StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_is_taken_is_told_without_a_fix()
    {
        var files = Sources();
        files["fan.proc"] = files["fan.proc"].Replace("  each side", "  part front_guard \"grille\" { mass 1 kg  held by 1 bolt as grille_bolt }\n  each side", StringComparison.Ordinal);
        var report = Check(files);
        var told = Assert.Single(report.Findings, reported => reported.Finding.Rule.Code == "PRC6008" && NameAt(report, reported.Finding) == "frontGuard").Finding;

        Assert.Empty(told.Fixes);
        Assert.StartsWith("choose another name: `front_guard` is taken", told.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_setting_every_name_is_right()
    {
        var files = Sources();
        files["procscript.json"] = "{}";

        Assert.DoesNotContain(Check(files).Findings, reported => reported.Finding.Rule.Code == "PRC6008");
    }

    private static Dictionary<string, string> Sources() => new() { ["fan.proc"] = Fan, ["job.proc"] = Job, ["procscript.json"] = Settings };

    private static LibraryReport Check(Dictionary<string, string> files) => LibraryCheck.Run(new MemorySourceStore(files), TestContext.Current.CancellationToken);

    private static string NameAt(LibraryReport report, Finding finding) => report.Library.Trees[finding.Primary.Path].Text.Slice(finding.Primary.Span);

    private static IEnumerable<string> Others(LibraryReport report) =>
        report.Findings.Select(reported => reported.Finding.Rule.Code).Where(code => code != "PRC6008").Order(StringComparer.Ordinal);

    private static Dictionary<string, string> Applied(Dictionary<string, string> files, IEnumerable<TextEdit> edits)
    {
        foreach (var file in edits.GroupBy(edit => edit.Place.Path))
        {
            files[file.Key] = TextEdits.Apply(files[file.Key], file.OrderBy(edit => edit.Place.Span.Start));
        }

        return files;
    }
}
