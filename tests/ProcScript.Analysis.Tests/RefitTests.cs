namespace ProcScript.Analysis.Tests;

public sealed class RefitTests
{
    private const string TwoLids = """
        part lid "lid" { held by 2 pin as lid_pins }
        part pan "pan" { held by 3 pin as pan_pins }
        """;

    private const string TwoLidsOff = """
        release lid_pins
        remove lid
        release pan_pins
        remove pan
        """;

    [Fact]
    public void Without_rules_the_refit_is_the_exact_reverse() => Assert.Equal(
        ["fit pan", "engage pan_pins", "fit lid", "engage lid_pins"],
        Checked.Stage(TwoLids, TwoLidsOff).Refit);

    [Fact]
    public void A_rule_moves_as_little_as_it_must() => Assert.Equal(
        ["fit lid", "fit pan", "engage pan_pins", "engage lid_pins"],
        Checked.Stage(TwoLids, TwoLidsOff, "refit { fit lid before fit pan }").Refit);

    [Fact]
    public void A_rule_on_what_went_off_in_pieces_binds_all_pieces() => Assert.Equal(
        ["fit pan", "fit lid", "engage 1 of lid_pins", "engage 1 of lid_pins", "engage 1 of pan_pins", "engage 2 of pan_pins"],
        Checked.Stage(
            TwoLids,
            """
            release 1 of lid_pins
            release lid_pins
            remove lid
            release 2 of pan_pins
            release rest of pan_pins
            remove pan
            """,
            "refit { engage pan_pins after engage lid_pins }").Refit);

    [Fact]
    public void What_was_loosened_is_tightened_at_its_mirrored_place() => Assert.Equal(
        ["fasten lid_bolts", "return lid", "tighten lid_bolts"],
        Checked.Stage(
            """
            part lid "lid" {
              held by 2 bolt as lid_bolts { torque 5 N.m }
              aside "Tilt it." needs lid_bolts
            }
            """,
            """
            loosen lid_bolts
            aside lid
            undo lid_bolts
            """).Refit);

    [Fact]
    public void A_part_goes_back_aside_where_it_was_aside() => Assert.Equal(
        ["fit lid", "return lid", "engage lid_pins"],
        Checked.Stage(
            """
            part lid "lid" {
              held by 2 pin as lid_pins
              aside "Tilt it." needs lid_pins
            }
            """,
            """
            release lid_pins
            aside lid
            remove lid
            """).Refit);

    [Fact]
    public void A_rule_may_move_work_from_the_machine_to_the_bench()
    {
        const string machine = """
            part hood "hood" {
              held by 2 pin as hood_pins
              part lamp "lamp" { held by 1 pin as lamp_pin }
            }
            """;
        const string steps = """
            release lamp_pin
            remove lamp
            release hood_pins
            remove hood
            """;

        Assert.Equal(["fit hood", "engage hood_pins", "fit lamp", "engage lamp_pin"], Checked.Stage(machine, steps).Refit);
        Assert.Equal(
            ["fit lamp", "engage lamp_pin", "fit hood", "engage hood_pins"],
            Checked.Stage(machine, steps, "refit { engage lamp_pin before fit hood }").Refit);
    }

    [Fact]
    public void A_control_that_only_the_refit_needs_is_set_and_set_back_once_for_neighbours() => Assert.Equal(
        ["fit lid", "set lever to down", "engage lid_pins", "engage lid_clips", "set lever to up"],
        Checked.Stage(
            """
            control lever "lever" { up, down }
            part lid "lid" {
              held by 2 pin as lid_pins { refit needs lever at down }
              held by 2 pin as lid_clips { at "rear"  refit needs lever at down }
            }
            """,
            """
            release lid_clips
            release lid_pins
            remove lid
            """).Refit);

    [Fact]
    public void A_control_that_a_set_needs_is_set_around_it() => Assert.Equal(
        ["fit lid", "set brake to on", "set lever to down", "engage lid_pins", "set lever to up", "set brake to off"],
        Checked.Stage(
            """
            control brake "brake" { off, on }
            control lever "lever" { up, down  needs brake at on }
            part lid "lid" { held by 2 pin as lid_pins { refit needs lever at down } }
            """,
            """
            release lid_pins
            remove lid
            """).Refit);

    [Fact]
    public void A_set_waits_with_the_action_that_it_is_for() => Assert.Equal(
        ["fit lid", "fit pan", "engage pan_pins", "set lever to down", "engage lid_pins", "set lever to up"],
        Checked.Stage(
            """
            control lever "lever" { up, down }
            part lid "lid" { held by 2 pin as lid_pins { refit needs lever at down } }
            part pan "pan" { held by 3 pin as pan_pins }
            """,
            """
            release pan_pins
            remove pan
            release lid_pins
            remove lid
            """,
            "refit { engage lid_pins after engage pan_pins }").Refit);

    [Fact]
    public void What_the_refit_alone_needs_is_waited_for() => Assert.Equal(
        ["fit pan", "fit lid", "engage pan_pins", "engage lid_pins"],
        Checked.Stage(
            """
            part lid "lid" { held by 2 pin as lid_pins }
            part pan "pan" { held by 3 pin as pan_pins { refit needs lid fitted } }
            """,
            TwoLidsOff).Refit);

    [Fact]
    public void What_the_refit_alone_needs_and_later_loses_goes_first() => Assert.Equal(
        ["fit pan", "engage pan_pins", "fit lid", "engage lid_pins"],
        Checked.Stage(
            """
            part lid "lid" { held by 2 pin as lid_pins }
            part pan "pan" { refit needs lid out  held by 3 pin as pan_pins }
            """,
            """
            release pan_pins
            remove pan
            release lid_pins
            remove lid
            """).Refit);

    [Fact]
    public void Power_comes_back_after_every_joint_on_it_even_those_closed_on_the_bench() => Assert.Equal(
        ["fit lamp", "plug lamp_plug", "restore mains", "fit hood", "engage hood_pins"],
        Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            part hood "hood" {
              held by 2 pin as hood_pins
              part lamp "lamp" { wired by 1 plug_2 as lamp_plug { to hood  on mains } }
            }
            """,
            """
            release hood_pins
            remove hood
            unplug lamp_plug
            isolate mains
            remove lamp
            """).Refit);

    [Fact]
    public void Checks_stand_where_they_are_asked_for_and_else_at_the_end() => Assert.Equal(
        ["fit pan", "check before", "engage pan_pins", "fit lid", "check after", "engage lid_pins", "check last"],
        Checked.Stage(
            TwoLids,
            TwoLidsOff,
            """
            refit {
              check "last"
              check "after" after fit lid
              check "before" before engage pan_pins
            }
            """).Refit);

    [Fact]
    public void A_check_comes_as_late_as_its_conditions_hold() => Assert.Equal(
        ["fit pan", "engage pan_pins", "check pan", "fit lid", "engage lid_pins"],
        Checked.Stage(TwoLids, TwoLidsOff, """refit { check "pan" needs lid out, pan fitted }""").Refit);

    [Fact]
    public void What_is_discarded_does_not_go_back_and_takes_what_is_in_it_along() => Assert.Equal(
        ["fit pan", "engage pan_pins"],
        Checked.Stage(
            """
            part lid "lid" {
              held by 2 bolt as lid_bolts { covered by 2 cap as lid_caps }
              part lamp "lamp" { held by 1 pin as lamp_pin }
            }
            part pan "pan" { held by 3 pin as pan_pins }
            """,
            """
            release lamp_pin
            remove lamp
            release lid_caps
            undo lid_bolts
            remove lid
            release pan_pins
            remove pan
            discard lid because "Not made any more."
            """).Refit);

    [Fact]
    public void A_rule_that_power_contradicts_lists_the_joints_still_open()
    {
        var check = Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            part loom "loom"
            part hood "hood" { held by 2 pin as hood_pins }
            part lamp "lamp" { behind hood  wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            part horn "horn" { wired by 1 plug_2 as horn_plug { to loom  on mains } }
            """,
            """
            isolate mains
            unplug horn_plug
            remove horn
            release hood_pins
            remove hood
            unplug lamp_plug
            remove lamp
            """,
            """refit { check "It lights." needs mains live before fit horn }""");

        Assert.Equal(["PRC4004 the mains is wanted live while `horn_plug` is not closed and tight yet"], check.Findings);
    }

    [Fact]
    public void A_rule_that_cannot_hold_is_shown_as_the_shortest_circle()
    {
        var check = Checked.Stage(
            """
            part hood "hood" { held by 2 pin as hood_pins }
            part lamp "lamp" { behind hood  held by 1 pin as lamp_pin }
            """,
            """
            release hood_pins
            remove hood
            release lamp_pin
            remove lamp
            """,
            "refit { fit lamp after engage hood_pins }");

        var found = check.OnlyFinding;
        Assert.Equal("PRC4003", found.Rule.Code);
        Assert.Equal("`fit lamp` cannot wait for `engage hood_pins`", found.Message);
        Assert.Equal(
            [
                "`fit hood` goes after `fit lamp`, which needs the hood out of the way",
                "`engage hood_pins` goes after `fit hood`: it needs the hood in place",
            ],
            found.Related.Select(related => related.Label));
    }

    [Fact]
    public void Whoever_touches_what_is_worked_on_in_the_background_waits()
    {
        var check = Checked.Stage(
            TwoLids,
            TwoLidsOff,
            """
            work {
              clean pan in background
              task "Let the sealant set." in background
            }
            """);

        Assert.Empty(check.Findings);
        var refit = check.Only.Outcome.Refit!.Actions;
        Assert.Equal([4], refit[0].WaitsFor);
        Assert.All(refit.Skip(1), action => Assert.Empty(action.WaitsFor));
    }

    [Fact]
    public void Power_goes_only_when_what_runs_on_it_in_the_background_has_ended()
    {
        var check = Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            fluid oil "oil" { charge 2 ± 0.1 L  strip needs mains live  empty "Pump it out."  fill "Fill." }
            """,
            """
            empty oil in background
            isolate mains
            """);

        Assert.Equal(["restore mains", "fill oil"], check.Refit);
        Assert.Equal([0], check.Only.Outcome.Strip!.Actions[1].WaitsFor);
    }

    [Fact]
    public void Each_need_says_what_met_it()
    {
        var outcome = Checked.Stage(
            """
            part hood "hood" { held by 2 pin as hood_pins }
            part lamp "lamp" { behind hood  held by 1 pin as lamp_pin }
            """,
            """
            release hood_pins
            remove hood
            release lamp_pin
            """).Only.Outcome;

        Assert.Equal([1, -1], outcome.Strip!.Actions[2].Needs.Select(need => need.MetBy));
        // The pin goes in while the hood is out, which the strip had brought about.
        Assert.Equal(1, outcome.Refit!.Actions[0].Needs.First(need => need.Need.Item.Name == "hood").MetBy);
    }

    [Fact]
    public void All_that_is_set_for_one_step_stays_right_before_it_wherever_a_rule_moves_it()
    {
        var check = Checked.Stage(
            """
            control speed { low, high }
            control mode { still, turning }
            part base "base" { held by 1 bolt as base_bolt }
            part cover "cover" { refit needs speed at high, mode at turning }
            """,
            """
            undo base_bolt
            remove base
            remove cover
            """,
            """
            refit { fit cover after fit base }
            """);

        Assert.Equal(
            ["fit base", "set speed to high", "set mode to turning", "fit cover", "set mode to still", "set speed to low", "fasten base_bolt"],
            check.Refit);
    }
}
