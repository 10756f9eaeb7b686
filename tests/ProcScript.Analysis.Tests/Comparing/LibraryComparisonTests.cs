using ProcScript.Analysis.Comparing;

namespace ProcScript.Analysis.Tests.Comparing;

public sealed class LibraryComparisonTests
{
    private const string Text =
        """
        tool key "13 mm key"
        tool wrench "16 mm key"
        fastener m8 "M8 bolt" { thread M8x1.25 length 25 mm grade 8.8 drive key torque 22 ± 2 N.m }
        fastener m10 "M10 bolt" { thread M10x1.5 length 30 mm grade 8.8 drive wrench torque 44 ± 4 N.m }
        clip pin "pin" { spare 10 % }
        machine press "Press" {
          part cover "cover" { mass 2 kg held by 4 m8 as cover_bolts }
          part guard "guard" { behind cover held by 2 m10 as guard_bolts held by 4 pin as guard_pins }
        }
        procedure guard_off "Take the guard off" on press {
          stage "Cover" {
            undo cover_bolts
            remove cover
          }
          stage "Guard" {
            warning "The edge cuts off a finger. Wear gloves."
            release guard_pins
            undo guard_bolts
            remove guard
          }
        }

        """;

    [Fact]
    public void A_state_says_nothing_otherwise_than_itself()
    {
        Assert.True(Compare(Text, Text).IsEmpty);
        var example = WorkedExample.Check().Report.Procedures;
        Assert.True(LibraryComparison.Of(example, example, (_, _) => []).IsEmpty);
    }

    [Fact]
    public void A_comment_and_another_job_leave_a_pack_and_its_revision_as_they_are()
    {
        Assert.Empty(Compare(Text, Text + "// More.\n").Changed);
        Assert.Empty(Compare(Text, Text + "procedure cover_off \"Take the cover off\" on press { stage \"Cover\" { strip cover } }\n").Changed);
    }

    [Fact]
    public void What_is_worn_is_told_at_its_step_or_makes_every_card_void()
    {
        var step = Job("remove guard\n", "remove guard { ppe \"helmet\" }\n");
        Assert.Equal(["strip", "refit"], step.Steps.Select(one => one.Phase));
        Assert.All(step.Steps, one => Assert.Equal(new ValueChange("protective equipment", "", "helmet"), Assert.Single(one.Values)));

        var job = Job("stage \"Cover\" {", "ppe \"helmet\"\nstage \"Cover\" {");
        Assert.Empty(job.Steps);
    }

    [Fact]
    public void A_torque_is_told_where_it_is_used_and_makes_that_card_void()
    {
        var job = Job("torque 22 ± 2", "torque 24 ± 2");

        var step = Assert.Single(job.Steps);
        Assert.Equal(("changed", "refit", "Cover"), (step.Kind, step.Phase, step.NewCard));
        Assert.Equal("torque", step.Values[0].What);
        Assert.StartsWith("22", step.Values[0].Old, StringComparison.Ordinal);
        Assert.StartsWith("24", step.Values[0].New, StringComparison.Ordinal);
    }

    [Fact]
    public void A_count_is_told_for_strip_refit_and_bag()
    {
        var job = Job("held by 2 m10", "held by 3 m10");

        Assert.Equal(["strip", "refit"], job.Steps.Select(step => step.Phase));
        Assert.All(job.Steps, step => Assert.Contains(step.Values, value => value is { What: "count", Old: "2", New: "3" }));
        Assert.DoesNotContain(job.Steps.SelectMany(step => step.Values), value => value.What == "text");
        Assert.Contains(job.Lists, line => line is { List: "bags", Kind: "changed" });
    }

    [Fact]
    public void A_step_that_comes_moves_the_numbers_of_those_after_it_and_no_more()
    {
        var job = Job("    undo cover_bolts\n", "    task \"Wipe the cover.\"\n    undo cover_bolts\n");

        var step = Assert.Single(job.Steps, step => step.Kind == "added");
        Assert.Equal((1, 0, "Cover"), (step.NewStep, step.OldStep, step.NewCard));
        Assert.Single(job.Steps);
    }

    [Fact]
    public void A_step_that_moves_is_neither_added_nor_dropped()
    {
        var job = Job("    release guard_pins\n    undo guard_bolts\n", "    undo guard_bolts\n    release guard_pins\n");

        Assert.Equal(["moved", "moved"], job.Steps.Select(step => step.Kind));
        Assert.Equal(["strip", "refit"], job.Steps.Select(step => step.Phase));
    }

    [Fact]
    public void A_card_with_another_title_has_no_moved_steps()
    {
        var job = Job("stage \"Cover\"", "stage \"Lid\"");

        Assert.Empty(job.Steps);
    }

    [Fact]
    public void Tools_and_orders_that_come_and_go_are_told()
    {
        var job = Job("drive wrench", "drive key");
        Assert.Contains(job.Lists, line => line is { List: "tools", Kind: "dropped" } && line.Title.Contains("16 mm", StringComparison.Ordinal));

        var spare = Assert.Single(Job("pin \"pin\" { spare 10 % }", "pin \"pin\" { single use }").Lists, line => line.List == "order list" && line.Kind == "added");
        Assert.Equal(("pin (single use)", "4"), (spare.Title, spare.New));
        Assert.Contains(Job("pin \"pin\" { spare 10 % }", "pin \"pin\" { single use }").Steps, step => step.Values.Any(value => value.What == "new parts"));
    }

    [Theory]
    [InlineData("warning \"The", "caution \"The", "weakened", true)]
    [InlineData("warning \"The", "danger \"The", "strengthened", false)]
    [InlineData("cuts off a finger", "takes off a finger", "reworded", false)]
    [InlineData("    warning \"The edge cuts off a finger. Wear gloves.\"\n", "", "removed", true)]
    public void An_alert_that_is_otherwise_is_weighed(string old, string fresh, string kind, bool isLoss)
    {
        var (change, losses) = WithLosses(Text, Text.Replace(old, fresh, StringComparison.Ordinal));

        var alert = Assert.Single(Assert.Single(change.Changed).Alerts);
        Assert.Equal((kind, isLoss), (alert.Kind, alert.IsLoss));
        Assert.Equal(isLoss ? ["PRC5095"] : [], losses);
    }

    [Fact]
    public void An_alert_goes_with_its_step_and_moves_with_it()
    {
        var warning = "    warning \"The edge cuts off a finger. Wear gloves.\"\n";
        var gone = Job("held by 4 pin as guard_pins", "", warning + "    release guard_pins\n", "");
        Assert.Equal("gone with its step", Assert.Single(gone.Alerts).Kind);

        var moved = Job(warning + "    release guard_pins\n    undo guard_bolts\n", "    undo guard_bolts\n" + warning + "    release guard_pins\n");
        Assert.Empty(moved.Alerts);
    }

    private const string Safe =
        """
        connector plug_3 "plug"
        clip pin "pin"
        machine oven "Oven" {
          energy mains "230 V mains" {
            isolate "Pull the plug."
            lock "Hang your tag on it."
            bleed "Let the capacitor drain."
            wait 5 min
            verify "Measure live to neutral" expect < 1 V
            restore "Put the plug in."
          }
          part motor "motor" { held by 2 pin as motor_pins }
          part fan "fan" { wired by 1 plug_3 as fan_plug on mains }
          part shelf "shelf" { held by 1 pin as shelf_pin }
        }
        procedure motor_out "Take the motor out" on oven {
          stage "Motor" {
            isolate mains
            unplug fan_plug
            remove fan
            support motor
            release motor_pins
            remove motor
            release shelf_pin
          }
        }

        """;

    [Theory]
    [InlineData("    support motor\n", "", "gone support")]
    [InlineData("    isolate mains\n", "", "gone isolate", " on mains", "")]
    [InlineData("    lock \"Hang your tag on it.\"\n", "", "gone lock")]
    [InlineData("    bleed \"Let the capacitor drain.\"\n", "", "gone bleed")]
    [InlineData("    verify \"Measure live to neutral\" expect < 1 V\n", "", "gone verify")]
    [InlineData("    wait 5 min\n", "", "gone wait")]
    [InlineData("wait 5 min", "wait 299 s", "weaker wait")]
    [InlineData("expect < 1 V", "", "gone expect")]
    [InlineData("expect < 1 V", "expect <= 1100 mV", "weaker expect")]
    [InlineData("expect < 1 V", "expect > 1 V", "weaker expect")]
    public void A_precaution_that_is_gone_or_weaker_is_a_finding(string old, string fresh, string told, params string[] more)
    {
        var other = more.Chunk(2).Aggregate(Safe.Replace(old, fresh, StringComparison.Ordinal), (text, pair) => text.Replace(pair[0], pair[1], StringComparison.Ordinal));
        var (change, losses) = WithLosses(Safe, other);

        Assert.NotEqual(Safe, other);
        Assert.Equal([told], Assert.Single(change.Changed).Safety.Select(safety => $"{safety.Kind} {safety.Measure}"));
        Assert.Equal(["PRC5096"], losses);
        Assert.DoesNotContain("PRC5096", WithLosses(other, Safe).Losses);
    }

    [Theory]
    [InlineData("wait 5 min", "wait 300 s")]
    [InlineData("wait 5 min", "wait 10 min")]
    [InlineData("expect < 1 V", "expect <= 900 mV")]
    [InlineData("Hang your tag on it.", "Carry the plug in your pocket.")]
    [InlineData("    isolate mains\n    unplug fan_plug\n    remove fan\n", "")]
    [InlineData("    support motor\n    release motor_pins\n    remove motor\n", "")]
    [InlineData("    isolate mains\n    unplug fan_plug\n    remove fan\n    support motor\n", "    support motor\n    isolate mains\n    unplug fan_plug\n    remove fan\n")]
    public void What_is_as_safe_as_before_or_no_longer_called_for_is_none(string old, string fresh)
    {
        var (change, losses) = WithLosses(Safe, Safe.Replace(old, fresh, StringComparison.Ordinal));

        Assert.Empty(Assert.Single(change.Changed).Safety);
        Assert.Empty(losses);
    }

    [Theory]
    [InlineData("strip ", 8)]
    [InlineData("refit ", 3)]
    public void An_alert_that_is_to_hold_one_way_only_is_lost_on_the_other(string direction, int lostBefore)
    {
        var (change, losses) = WithLosses(Text, Text.Replace("warning \"The", direction + "warning \"The", StringComparison.Ordinal));

        var alert = Assert.Single(Assert.Single(change.Changed).Alerts);
        Assert.Equal(("removed", lostBefore), (alert.Kind, alert.NewStep));
        Assert.Equal(["PRC5095"], losses);
    }

    [Fact]
    public void Where_two_cards_become_one_an_alert_that_stands_once_a_card_is_not_lost()
    {
        var warned = Text.Replace("part guard \"guard\" {", "part guard \"guard\" { danger \"It will kill. Stay back.\"", StringComparison.Ordinal)
            .Replace("    undo guard_bolts\n    remove guard\n", "  }\n  stage \"More\" {\n    undo guard_bolts\n    remove guard\n", StringComparison.Ordinal);
        var (joined, losses) = WithLosses(warned, warned.Replace("  }\n  stage \"More\" {\n", "", StringComparison.Ordinal));

        Assert.Empty(Assert.Single(joined.Changed).Alerts);
        Assert.Empty(losses);
        Assert.Equal(["PRC5095"], WithLosses(warned, warned.Replace("danger \"It will kill. Stay back.\"", "", StringComparison.Ordinal)).Losses);
    }

    [Fact]
    public void Jobs_that_come_go_and_lose_their_proof_are_told_and_the_other_way_round_they_are_mirrored()
    {
        var more = Text + Text[Text.IndexOf("procedure", StringComparison.Ordinal)..].Replace("guard_off", "other", StringComparison.Ordinal);
        var broken = Text.Replace("    undo cover_bolts\n", "", StringComparison.Ordinal);

        Assert.Equal(["other"], Compare(Text, more).Added.Select(job => job.Job));
        Assert.Equal(["other"], Compare(more, Text).Dropped.Select(job => job.Job));
        Assert.Equal(["guard_off"], Compare(Text, broken).NoLongerProven.Select(job => job.Job));
        Assert.Equal(["guard_off"], Compare(broken, Text).NowProven.Select(job => job.Job));
        Assert.Equal(["guard_off"], Compare(broken, broken).NotCompared.Select(job => job.Job));
    }

    [Fact]
    public void What_is_added_one_way_is_dropped_the_other_way()
    {
        var other = Text.Replace("    undo cover_bolts\n", "    task \"Wipe the cover.\"\n    undo cover_bolts\n", StringComparison.Ordinal)
            .Replace("    release guard_pins\n    undo guard_bolts\n", "    undo guard_bolts\n    task \"Look.\"\n    release guard_pins\n", StringComparison.Ordinal);
        var (there, back) = (Compare(Text, other).Changed.Single(), Compare(other, Text).Changed.Single());

        Assert.Equal(Steps(there, "added"), Steps(back, "dropped"));
        Assert.Equal(Steps(there, "dropped"), Steps(back, "added"));
        Assert.Equal(2, Steps(there, "added").Count());
        Assert.Equal((there.OldRevision, there.NewRevision), (back.NewRevision, back.OldRevision));

        static IEnumerable<string> Steps(JobChange job, string kind) => job.Steps.Where(step => step.Kind == kind).Select(step => step.Text);
    }

    private static JobChange Job(params string[] replaced) => Assert.Single(Compare(
        Text,
        replaced.Chunk(2).Aggregate(Text, (text, pair) => text.Replace(pair[0], pair[1], StringComparison.Ordinal))).Changed);

    private static LibraryChange Compare(string old, string fresh) => WithLosses(old, fresh).Change;

    private static (LibraryChange Change, IEnumerable<string> Losses) WithLosses(string old, string fresh)
    {
        var (before, after) = (Checked.Text(old).Report.Procedures, Checked.Text(fresh).Report.Procedures);
        var change = LibraryComparison.Of(before, after, (_, _) => []);
        return (change, LibraryComparison.Losses(change, after).Select(finding => finding.Rule.Code));
    }
}
