using ProcScript.Analysis.Refactoring;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Refactoring;

/// <summary>A joint is covered with new caps, which the steps take off, or put behind a part that comes off before it.</summary>
public sealed class CoverJointTests
{
    private const string Machine =
        """
        tool key "key"
        fastener bolt "bolt" { drive key }

        machine fan "Fan" {
          part guard "front guard" { mass 1 kg  held by 4 bolt as guard_bolts }
          part wheel "wheel" { mass 1 kg  held by 2 bolt as hub_bolts { at "round the hub" } }
        }

        """;

    private const string Job =
        """
        use "fan.proc"

        procedure wheel_off "Take the wheel off" on fan {
          goal remove wheel
          stage "Guard" { undo guard_bolts  remove guard }
          stage "Wheel" {
            warning "The wheel is sharp."
            undo hub_bolts
            remove wheel
          }
        }

        """;

    [Fact]
    public void New_caps_are_taken_off_before_the_joint_is_opened_whatever_warns_of_it()
    {
        var after = Change("hub_bolts", "Cover it: 2 × `snap_on_cap` as `hub_caps`");

        Assert.Contains("clip snap_on_cap \"snap on cap\"\n\nmachine fan", after["fan.proc"], StringComparison.Ordinal);
        Assert.Contains("covered by 2 snap_on_cap as hub_caps", after["fan.proc"], StringComparison.Ordinal);
        Assert.Contains("  stage \"Wheel\" {\n    release hub_caps\n    warning \"The wheel is sharp.\"\n    undo hub_bolts\n", after["job.proc"], StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_that_comes_off_before_it_hides_it()
    {
        var after = Change("hub_bolts", "Cover it: behind `guard`");

        Assert.Contains("behind guard", after["fan.proc"], StringComparison.Ordinal);
        Assert.Equal(Job, after["job.proc"]);
    }

    [Fact]
    public void What_comes_off_after_it_or_is_held_by_it_hides_nothing() =>
        Assert.DoesNotContain(At(Check(Sources()), "guard_bolts"), change => change.Title.StartsWith("Cover it: behind", StringComparison.Ordinal));

    [Fact]
    public void A_joint_with_a_cover_gets_no_second_one()
    {
        var covered = Change("hub_bolts", "Cover it: 2 × `snap_on_cap` as `hub_caps`");

        Assert.DoesNotContain(At(Check(covered), "hub_bolts"), change => change.Title.Contains('×', StringComparison.Ordinal));
    }

    private static Dictionary<string, string> Sources() => new() { ["fan.proc"] = Machine, ["job.proc"] = Job };

    private static LibraryReport Check(Dictionary<string, string> files) => LibraryCheck.Run(new MemorySourceStore(files), TestContext.Current.CancellationToken);

    private static List<Analysis.Refactoring.Refactoring> At(LibraryReport report, string joint)
    {
        var place = report.Library.Trees["fan.proc"].Text.Content.IndexOf($"as {joint}", StringComparison.Ordinal) + 3;
        return [.. Refactorings.For(report, "fan.proc", new TextSpan(place, 0), TestContext.Current.CancellationToken)];
    }

    /// <summary>The files after a change, which is sound: no error, and every procedure is proven.</summary>
    private static Dictionary<string, string> Change(string joint, string title)
    {
        var files = Sources();
        var change = Assert.Single(At(Check(files), joint), one => one.Title == title);
        foreach (var file in change.Edits.GroupBy(edit => edit.Place.Path))
        {
            files[file.Key] = TextEdits.Apply(files[file.Key], file);
        }

        var report = Check(files);
        Assert.Empty(report.Findings.Where(reported => reported.Severity == Severity.Error).Select(reported => reported.Finding.Message));
        Assert.All(report.Procedures, one => Assert.True(one.IsProven));
        return files;
    }
}
