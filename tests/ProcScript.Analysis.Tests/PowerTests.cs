namespace ProcScript.Analysis.Tests;

/// <summary>When power comes back, and what is propped meanwhile.</summary>
public sealed class PowerTests
{
    private const string Energy = """energy e "e" { isolate "Off."  verify "Dark."  restore "On." }""";

    [Fact]
    public void Power_waits_for_the_cover_over_a_joint_on_it() => Assert.Equal(
        ["plug plug_1", "engage plug_cap", "restore e"],
        Checked.Stage(
            $"{Energy} part p \"p\" {{ wired by 1 plug_2 as plug_1 on e covered by 1 cap as plug_cap }}",
            "release plug_cap isolate e unplug plug_1").Refit);

    [Fact]
    public void Power_waits_until_a_guard_that_was_moved_aside_is_back_and_tight() => Assert.Equal(
        ["plug plug_1", "return lid", "tighten lid_bolts", "restore e"],
        Checked.Stage(
            $$"""
            {{Energy}}
            part lid "lid" { held by 2 bolt as lid_bolts  aside "Tilt." needs lid_bolts }
            part p "p" { behind lid  wired by 1 plug_2 as plug_1 on e }
            """,
            "loosen lid_bolts aside lid isolate e unplug plug_1").Refit);

    [Fact]
    public void Power_waits_for_what_hides_a_guard() => Assert.Equal(
        ["plug plug_1", "fit inner", "engage inner_pins", "fit outer", "engage outer_pins", "restore e"],
        Checked.Stage(
            $$"""
            {{Energy}}
            part outer "outer" { held by 2 pin as outer_pins }
            part inner "inner" { behind outer  held by 2 pin as inner_pins }
            part p "p" { behind inner  wired by 1 plug_2 as plug_1 on e }
            """,
            "release outer_pins remove outer release inner_pins remove inner isolate e unplug plug_1").Refit);

    [Fact]
    public void Power_does_not_wait_for_a_guard_that_is_discarded() => Assert.Equal(
        ["plug plug_1", "restore e"],
        Checked.Stage(
            $$"""
            {{Energy}}
            part lid "lid" { held by 2 pin as lid_pins }
            part p "p" { behind lid  wired by 1 plug_2 as plug_1 on e }
            """,
            "release lid_pins remove lid isolate e unplug plug_1 discard lid because \"It goes.\"").Refit);

    [Fact]
    public void Power_does_not_wait_for_what_is_in_the_way_of_its_own_switch() => Assert.Equal(
        ["plug plug_1", "restore e", "fit lid", "engage lid_pins"],
        Checked.Stage(
            """
            energy e "e" { behind lid  isolate "Off."  verify "Dark."  restore "On." }
            part lid "lid" { held by 2 pin as lid_pins }
            part p "p" { behind lid  wired by 1 plug_2 as plug_1 on e }
            """,
            "release lid_pins remove lid isolate e unplug plug_1").Refit);

    [Fact]
    public void Power_does_not_wait_for_a_part_that_hides_nothing_of_it() => Assert.Equal(
        ["plug plug_1", "restore e", "fit lid", "engage lid_pins"],
        Checked.Stage(
            $$"""
            {{Energy}}
            part lid "lid" { held by 2 pin as lid_pins }
            part p "p" { wired by 1 plug_2 as plug_1 on e }
            """,
            "release lid_pins remove lid isolate e unplug plug_1").Refit);

    [Fact]
    public void Power_does_not_wait_for_what_asks_for_it_isolated_only_on_the_way_out() => Assert.Equal(
        ["restore e", "fit lid", "engage lid_pins"],
        Checked.Stage(
            $"{Energy} part lid \"lid\" {{ strip needs e isolated  held by 2 pin as lid_pins }}",
            "isolate e release lid_pins remove lid",
            "refit { restore e before fit lid }").Refit);

    [Fact]
    public void A_test_brings_energies_back_in_the_order_of_their_return_and_isolates_them_the_other_way_round() => Assert.Equal(
        ["plug plug_1", "restore f", "restore e", "check It runs.", "isolate e", "isolate f", "fit lid", "engage lid_pins", "restore f", "restore e"],
        Checked.Stage(
            $$"""
            {{Energy}}
            energy f "f" { after e  isolate "Off."  verify "Dark."  restore "On." }
            part lid "lid" { held by 2 pin as lid_pins }
            part p "p" { behind lid  wired by 1 plug_2 as plug_1 on f }
            """,
            "release lid_pins remove lid isolate e isolate f unplug plug_1",
            "refit { test \"T\" before fit lid { power e, f  check \"It runs.\" } }").Refit);

    [Fact]
    public void A_test_without_a_place_stands_right_before_power_comes_back() => Assert.Equal(
        ["plug plug_1", "fit lid", "engage lid_pins", "restore e", "check It runs.", "isolate e", "restore e"],
        Checked.Stage(
            $$"""
            {{Energy}}
            part lid "lid" { held by 2 pin as lid_pins }
            part p "p" { behind lid  wired by 1 plug_2 as plug_1 on e }
            """,
            "release lid_pins remove lid isolate e unplug plug_1",
            "refit { test \"T\" { power e  check \"It runs.\" } }").Refit);

    [Fact]
    public void A_test_of_what_is_never_isolated_has_nothing_to_switch_on() => Assert.Equal(
        "PRC4006 the test \"T\" needs the e proved to be off, which is never so in the refit",
        Assert.Single(Checked.Stage(
            $"{Energy} part lid \"lid\" {{ held by 2 pin as lid_pins }}",
            "release lid_pins remove lid",
            "refit { test \"T\" { power e  check \"It runs.\" } }").Findings));

    [Fact]
    public void Power_waits_for_the_fluid_that_it_drives() => Assert.Equal(
        ["connect hoses", "fill oil", "fit lid", "engage lid_pins", "restore e"],
        Checked.Stage(
            $$"""
            {{Energy}}
            fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain."  fill "Fill." }
            part lid "lid" { held by 2 pin as lid_pins }
            part p "p" { piped by 1 hose as hoses { on e  carries oil } }
            """,
            "isolate e release lid_pins remove lid empty oil disconnect hoses",
            "refit { check \"No leak.\" after fill oil }").Refit.Where(line => line != "check No leak."));

    [Fact]
    public void Power_does_not_wait_for_a_fluid_that_comes_only_with_it() => Assert.Equal(
        ["connect hoses", "restore e", "fill water"],
        Checked.Stage(
            $$"""
            {{Energy}}
            fluid water "water" { charge 2 ± 0.1 L  strip needs e isolated  refit needs e live  empty "Drain."  fill "Open the cock." }
            part p "p" { piped by 1 hose as hoses { on e  carries water } }
            """,
            "isolate e empty water disconnect hoses",
            "refit { check \"No leak.\" after fill water }").Refit.Where(line => line != "check No leak."));

    [Fact]
    public void A_loosened_joint_wants_its_fluid_out() => Assert.Contains(
        "PRC3005",
        Checked.Stage(
            """
            fluid oil "oil" { empty "Drain."  fill "Fill." }
            part p "p" { held by 2 bolt as plugs { carries oil } }
            """,
            "loosen plugs").Codes);

    [Fact]
    public void Work_on_a_joint_wants_its_energy_isolated() => Assert.Contains(
        "PRC3013",
        Checked.Stage($"{Energy} part p \"p\" {{ wired by 1 plug_2 as plug_1 on e }}", "clean plug_1").Codes);

    [Fact]
    public void Work_on_a_joint_that_asks_for_it_live_is_done_live() => Assert.DoesNotContain(
        "PRC3013",
        Checked.Stage($"{Energy} part p \"p\" {{ wired by 1 plug_2 as plug_1 on e }}", "inspect plug_1 { needs e live }").Codes);

    [Fact]
    public void A_part_that_came_out_of_its_prop_goes_back_onto_it() => Assert.Equal(
        ["support box", "fit box", "engage box_pins", "unsupport box"],
        Checked.Stage("part box \"box\" { held by 2 pin as box_pins }", "support box release box_pins remove box").Refit);

    [Fact]
    public void A_part_that_only_hangs_in_its_prop_keeps_it() => Assert.Equal(
        ["engage box_pins", "unsupport box"],
        Checked.Stage("part box \"box\" { held by 2 pin as box_pins }", "support box release box_pins").Refit);

    [Fact]
    public void What_is_out_is_not_propped() => Assert.Contains(
        "PRC3006",
        Checked.Stage("part box \"box\" { held by 2 pin as box_pins }", "release box_pins remove box support box").Codes);

    [Fact]
    public void A_rule_may_name_the_prop_of_the_refit() => Assert.Equal(
        ["fit lid", "engage lid_pins", "support box", "fit box", "engage box_pins", "unsupport box"],
        Checked.Stage(
            """
            part lid "lid" { held by 2 pin as lid_pins }
            part box "box" { held by 2 pin as box_pins }
            """,
            "release lid_pins remove lid support box release box_pins remove box",
            "refit { support box after engage lid_pins }").Refit);
}
