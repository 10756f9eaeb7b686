using ProcScript.Analysis.Mending;
using ProcScript.Analysis.Tests.Necessity;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Mending;

public sealed class PrecautionGuardTests
{
    private const string Text =
        """
        clip pin "pin"
        connector plug_3 "plug"
        machine oven "Oven" {
          energy mains "24 V supply" { isolate "Pull the plug."  verify "The lamp stays dark."  restore "Put the plug in." }
          part fan "fan" { wired by 1 plug_3 as fan_plug on mains  held by 2 pin as fan_pins }
          part shelf "shelf" { held by 1 pin as shelf_pin }
        }
        procedure dead "Make it safe" on oven {
          stage "Safe" { isolate mains }
        }
        procedure shelf_off "Take the shelf off" on oven {
          goal remove shelf
          stage "Shelf" {
            release shelf_pin
            remove shelf
          }
        }
        procedure fan_out "Take the fan out" on oven {
          goal remove fan
          stage "Fan" {
            isolate mains
            support fan
            unplug fan_plug
            release fan_pins
            remove fan
          }
        }
        procedure fan_seen "Take the fan out" on oven {
          goal remove fan
          do dead
          do shelf_off
          stage "Fan" {
            unplug fan_plug
            release fan_pins
            remove fan
          }
        }

        """;

    [Theory]
    [InlineData("    isolate mains\n", "", false)]
    [InlineData("isolate mains", "// isolate mains", false)]
    [InlineData("    isolate mains\n    support fan\n    unplug fan_plug\n", "", false)]
    [InlineData("  do dead\n", "", false)]
    [InlineData("isolate mains\n    support fan", "support fan\n    isolate mains", true)]
    [InlineData("    unplug fan_plug\n    release fan_pins\n", "", true)]
    [InlineData("  do shelf_off\n", "", true)]
    [InlineData("support fan", "support shelf", false)]
    public void What_takes_a_precaution_out_is_held_back_and_nothing_else(string old, string fresh, bool keeps)
    {
        var text = Text.ReplaceLineEndings("\n");
        var at = text.LastIndexOf(old, StringComparison.Ordinal);
        Fix fix = new("Try it", FixGrade.NeedsLook, [new TextEdit(new SourceSpan("x.proc", new TextSpan(at, old.Length)), fresh)]);

        Assert.True(at >= 0);
        Assert.Equal(keeps, new PrecautionGuard(Checked.Text(text).Report.Library).Keeps(fix));
    }

    [Fact]
    public void A_second_isolation_is_told_and_stays_for_a_person_to_take_out()
    {
        var text = Text.Replace("    support fan\n", "    isolate mains\n    support fan\n", StringComparison.Ordinal);
        var report = LibraryMend.Run(MemorySourceStore.Of("x.proc", text), CheckSettings.Usual, new MendRequest { NeedsLook = true }, TestContext.Current.CancellationToken);

        Assert.Contains(report.Left, left => left is { Because: LeftBecause.NoFix, Reported.Finding.Rule.Code: "PRC3006" });
        Assert.All(report.Files, file => Assert.Equal(4, file.After.Split("isolate mains").Length));
    }

    /// <summary>The plug has lost its energy: the isolation is asked about, never offered for removal.</summary>
    [Fact]
    public void An_isolation_that_nothing_needs_any_more_is_asked_about_and_stays()
    {
        var source = Checked.Text(Text.Replace(" on mains", "", StringComparison.Ordinal));
        var report = LibraryMend.Run(
            MemorySourceStore.Of("x.proc", Text.Replace(" on mains", "", StringComparison.Ordinal)), CheckSettings.Usual, new MendRequest { NeedsLook = true }, TestContext.Current.CancellationToken);

        Assert.DoesNotContain(Needless.In(source.Report).SelectMany(finding => Needless.Steps(source, finding)), step => step.Contains("isolate", StringComparison.Ordinal));
        Assert.Equal(["PRC5049", "PRC5049"], source.Codes.Where(code => code is not ("PRC5081" or "PRC8001")));
        Assert.All(report.Files, file => Assert.Equal(3, file.After.Split("isolate mains").Length));
    }
}
