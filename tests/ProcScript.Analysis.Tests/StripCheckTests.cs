namespace ProcScript.Analysis.Tests;

public sealed class StripCheckTests
{
    [Fact]
    public void What_follows_from_a_missing_step_stays_quiet()
    {
        var check = Checked.Stage(
            """
            part lid "lid" { held by 2 pin as lid_pins }
            part pump "pump" { behind lid  held by 2 pin as pump_pins }
            """,
            """
            release pump_pins
            remove pump
            """);

        Assert.Equal(["PRC3002 the lid is in the way when `pump_pins` is released"], check.Findings);
        Assert.False(check.Only.IsProven);
        Assert.Null(check.Only.Outcome.Refit);
    }

    [Fact]
    public void A_joint_that_is_opened_too_late_is_told_once()
    {
        var check = Checked.Stage(
            """part lid "lid" { held by 2 pin as lid_pins }""",
            """
            remove lid
            release lid_pins
            """);

        Assert.Equal(["PRC3001 the lid is still held when it is removed"], check.Findings);
    }

    [Fact]
    public void All_joints_that_hold_a_part_make_one_finding_and_one_edit()
    {
        var check = Checked.Stage(
            """
            part loom "loom"
            part lid "lid" {
              held by 2 bolt as lid_bolts
              held by 1 glue as lid_glue
              part lamp "lamp" { wired by 1 plug_2 as lamp_plug { to loom } }
            }
            """,
            "    remove lid");

        var found = check.OnlyFinding;
        Assert.Equal(
            "2 × bolt `lid_bolts` are still fastened, 1 × bond `lid_glue` is still in place and 1 × plug `lamp_plug` is still plugged"
                .Replace("bond", "glue", StringComparison.Ordinal),
            found.Label);
        Assert.Equal("undo `lid_bolts`, cut `lid_glue` and unplug `lamp_plug` first", found.Help);
        Assert.Equal("undo lid_bolts\n    cut lid_glue\n    unplug lamp_plug\n    ", found.Fixes[0].Edits[0].NewText);
    }

    [Fact]
    public void What_is_inserted_before_a_step_leaves_its_alerts_with_it()
    {
        var check = Checked.Stage(
            """part lid "lid" { held by 2 bolt as lid_bolts }""",
            """
                caution "It drops. Hold it from below."
                remove lid
            """);

        var edit = check.OnlyFinding.Fixes[0].Edits[0];
        Assert.Equal("undo lid_bolts\n    ", edit.NewText);
        Assert.StartsWith("caution", check.Report.Library.Trees["x.proc"].Text.Content[edit.Place.Span.Start..], StringComparison.Ordinal);
    }

    [Fact]
    public void A_joint_inside_a_part_travels_with_it()
    {
        var check = Checked.Stage(
            """
            part lid "lid" {
              held by 2 pin as lid_pins
              part lamp "lamp" { held by 1 pin as lamp_pin }
            }
            """,
            """
            release lid_pins
            remove lid
            """);

        Assert.Equal(["fit lid", "engage lid_pins"], check.Refit);
    }

    [Fact]
    public void On_the_bench_nothing_of_the_machine_is_in_the_way_or_live()
    {
        var check = Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            control lever "lever" { up, down }
            part hood "hood" { held by 1 pin as hood_pin }
            part lid "lid" {
              strip needs lever at up
              held by 2 pin as lid_pins
              part lamp "lamp" {
                behind hood
                needs lever at down
                wired by 1 plug_2 as lamp_plug { to lid  on mains }
              }
            }
            """,
            """
            release lid_pins
            remove lid
            unplug lamp_plug
            remove lamp
            """);

        Assert.Equal(["fit lamp", "plug lamp_plug", "fit lid", "engage lid_pins"], check.Refit);
    }

    [Fact]
    public void In_the_machine_the_conditions_of_all_that_holds_a_joint_bind()
    {
        var check = Checked.Stage(
            """
            control lever "lever" { up, down }
            part hood "hood" { held by 1 pin as hood_pin }
            part lid "lid" {
              behind hood
              part lamp "lamp" { needs lever at down  held by 1 pin as lamp_pin }
            }
            """,
            "    release lamp_pin");

        Assert.Equal(
            [
                "PRC3002 the hood is in the way when `lamp_pin` is released",
                "PRC3009 the lever is not at `down` when `lamp_pin` is released",
            ],
            check.Findings);
    }

    [Fact]
    public void A_slack_joint_lets_a_part_go_aside_and_does_not_let_it_out()
    {
        var check = Checked.Stage(
            """
            part lid "lid" {
              held by 2 bolt as lid_bolts
              aside "Tilt it." needs lid_bolts
            }
            part pump "pump" { behind lid }
            """,
            """
            loosen lid_bolts
            aside lid
            remove pump
            remove lid
            """);

        Assert.Equal(["PRC3001 the lid is still held when it is removed"], check.Findings);
    }

    [Fact]
    public void A_cover_needs_what_the_joint_under_it_needs()
    {
        var check = Checked.Stage(
            """
            part hood "hood" { held by 1 pin as hood_pin }
            part lid "lid" { held by 2 bolt as lid_bolts { behind hood  covered by 2 cap as lid_caps } }
            """,
            """
            release lid_caps
            undo lid_bolts
            remove lid
            """);

        Assert.Equal(["PRC3002 the hood is in the way when `lid_caps` is released"], check.Findings);
    }

    [Fact]
    public void A_finding_in_a_called_procedure_stands_in_its_own_text_and_work_done_before_at_the_call()
    {
        var check = Checked.Text(
            """
            clip pin "pin"
            machine m "M" {
              part hood "hood" { held by 1 pin as hood_pin }
              part lid "lid" { behind hood  held by 2 pin as lid_pins }
            }
            procedure lid_out "Lid" on m {
              stage "S" { strip lid }
            }
            procedure pins_off "Pins" on m {
              stage "S" { release lid_pins  remove lid }
            }
            procedure all "All" on m {
              stage "S" { release hood_pin }
              do lid_out
              stage "T" { release hood_pin }
            }
            """);

        Assert.Equal(
            ["PRC3002 the hood is in the way when `lid_pins` is released", "PRC3006 `hood_pin` is released already"],
            check.Findings);

        var called = Checked.Text(
            """
            clip pin "pin"
            machine m "M" { part lid "lid" { held by 2 pin as lid_pins } }
            procedure lid_out "Lid" on m {
              stage "S" { release lid_pins  remove lid }
            }
            procedure all "All" on m {
              stage "T" { release lid_pins }
              do lid_out
            }
            """).OnlyFinding;

        Assert.Equal("`do lid_out` comes to what is done already: `lid_pins` is released already", called.Message);
        Assert.Equal("of its 2 steps 1 has nothing left to do", called.Label);
        Assert.Equal(["done here"], called.Related.Select(related => related.Label));
        Assert.Equal(["Write `where needed`"], called.Fixes.Select(fix => fix.Title));
    }

    [Fact]
    public void A_finding_that_only_some_variants_have_says_which()
    {
        var check = Checked.Stage(
            """
            option roof_rack "roof rack"
            when roof_rack { part rack "rack" { held by 1 pin as rack_pin } }
            part lid "lid" {
              when roof_rack { behind rack }
              held by 2 pin as lid_pins
            }
            """,
            """
            release lid_pins
            remove lid
            """);

        Assert.Equal(["PRC3002 the rack is in the way when `lid_pins` is released, with `roof_rack`"], check.Findings);
        Assert.Equal([true, false], check.Report.Procedures.Select(report => report.IsProven));
    }

    [Fact]
    public void Passes_of_a_loop_are_told_once_and_mended_by_the_variable()
    {
        var check = Checked.Stage(
            """each side in left, right { part lid[side] "{side} lid" { held by 2 pin as lid_pins[side] } }""",
            "    each side in left, right { remove lid[side] }");

        var found = check.OnlyFinding;
        Assert.Equal("the left lid is still held when it is removed", found.Message);
        Assert.Equal("release lid_pins[side]  ", found.Fixes[0].Edits[0].NewText);
    }

    [Fact]
    public void A_machine_that_nothing_frees_is_told_at_the_machine_only()
    {
        var check = Checked.Stage(
            """
            part hood "hood" { held by 1 pin as hood_pin { behind lid } }
            part lid "lid" { held by 2 pin as lid_pins { behind hood } }
            """,
            """
            release lid_pins
            strip lid
            """);

        Assert.Equal(["PRC2002 nothing can free the hood and the lid"], check.Findings);
        Assert.False(check.Only.IsProven);
    }

    [Fact]
    public void A_goal_is_met_by_the_removal_that_strip_expands_to()
    {
        var check = Checked.Stage(
            """part lid "lid" { held by 2 pin as lid_pins }""",
            "    strip lid",
            "goal remove lid");

        Assert.Empty(check.Findings);
    }

    [Fact]
    public void A_goal_to_strip_a_part_is_met_by_its_removal()
    {
        var check = Checked.Stage(
            """part lid "lid" { held by 2 pin as lid_pins }""",
            """
            release lid_pins
            remove lid
            """,
            "goal strip lid");

        Assert.Empty(check.Findings);
    }

    [Fact]
    public void A_goal_that_was_tried_in_vain_is_told_at_the_step_alone()
    {
        var check = Checked.Stage(
            """part lid "lid" { held by 2 pin as lid_pins }""",
            "remove lid",
            "goal remove lid");

        Assert.Equal(["PRC3001 the lid is still held when it is removed"], check.Findings);
    }

    [Fact]
    public void A_goal_that_was_tried_and_has_no_way_out_is_told_once()
    {
        var check = Checked.Stage(
            """
            energy mains "mains" { isolate "Pull the plug." verify "It stays still." restore "Plug it in." }
            control ram "ram" { up, down  needs mains live }
            part lamp "lamp" { wired by 1 plug_2 as lamp_plug { on mains  needs ram at down } }
            """,
            """
            isolate mains
            strip lamp
            """,
            "goal remove lamp");

        Assert.Equal("PRC3016", Assert.Single(check.Codes));
    }

    [Fact]
    public void What_a_procedure_does_wrong_is_told_at_its_step_and_not_through_who_calls_it()
    {
        var check = Checked.Unasked(
            """
            clip pin "pin"
            machine m "M" { part guard "guard" { held by 2 pin as guard_pins } }
            procedure outer "O" on m { stage "S" { do guard_off } }
            procedure guard_off "G" on m { stage "S" { remove guard } }
            procedure another "A" on m { stage "S" { do guard_off } }
            """);

        var finding = check.OnlyFinding;
        Assert.Equal("PRC3001", finding.Rule.Code);
        Assert.DoesNotContain(finding.Related, related => related.Label.Contains("call", StringComparison.Ordinal));
    }
}
