using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Tests.Refitting;

/// <summary>What is inserted into a refit, and what lies together in it.</summary>
public sealed class InsertedTests
{
    [Fact]
    public void Setting_a_control_back_needs_what_setting_it_needed()
    {
        var refit = Checked.Stage(
            """
            control brake "brake" { off, on }
            control lever "lever" { up, down  needs brake at on }
            part lid "lid" { held by 2 pin as lid_pins { refit needs lever at down } }
            """,
            "release lid_pins remove lid").Only.Outcome.Refit!.Actions;

        var back = refit.Single(action => Checked.Line(action) == "set lever to up");
        Assert.Contains(back.Needs, met => met.Need is ControlAt { Control.Name: "brake" } && Checked.Line(refit.Single(action => action.Number == met.MetBy)) == "set brake to on");
    }

    [Fact]
    public void Controls_that_wait_for_each_other_are_told_and_not_set_for_ever() => Assert.Contains(
        "PRC4007",
        Checked.Stage(
            """
            control brake "brake" { off, on  refit needs lever at down }
            control lever "lever" { up, down  refit needs brake at on }
            part lid "lid" { held by 2 pin as lid_pins { refit needs lever at down } }
            """,
            "release lid_pins remove lid").Codes);

    [Fact]
    public void Each_action_of_a_test_goes_after_the_one_before_it()
    {
        var refit = Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            part lid "lid" { held by 2 pin as lid_pins }
            part lamp "lamp" { behind lid  wired by 1 plug_2 as lamp_plug on mains }
            """,
            "release lid_pins remove lid isolate mains unplug lamp_plug",
            "refit { test \"T\" before fit lid { power mains  check \"It lights.\" } }").Only.Outcome.Refit!;

        var test = refit.Actions.Where(action => action.Origin is TestStep).Select(action => action.Number).ToList();
        Assert.Equal(3, test.Count);
        Assert.All(test.Zip(test.Skip(1)), pair => Assert.Contains(refit.Order, edge => (edge.Earlier, edge.Later) == pair));
    }

    [Fact]
    public void What_was_done_on_the_bench_is_done_in_the_machine_where_a_rule_wants_it_so() => Assert.Equal(
        ["fit hood", "engage hood_pins", "fit lamp"],
        Checked.Stage(
            """
            control lever "lever" { low, high }
            part hood "hood" { needs lever at low  held by 2 pin as hood_pins  part lamp "lamp" }
            """,
            "release hood_pins remove hood remove lamp",
            "refit { fit lamp after engage hood_pins }").Refit);

    [Fact]
    public void What_was_out_of_the_way_on_the_bench_is_out_of_the_way_in_the_machine_too() => Assert.Equal(
        ["fit hood", "engage hood_pins", "fit lamp", "fit cover", "engage cover_pins"],
        Checked.Stage(
            """
            part cover "cover" { held by 2 pin as cover_pins }
            part hood "hood" { behind cover  held by 2 pin as hood_pins  part lamp "lamp" { behind cover } }
            """,
            "release cover_pins remove cover release hood_pins remove hood remove lamp",
            "refit { fit lamp after engage hood_pins }").Refit);

    [Theory]
    [InlineData("lever at down or brake at on", "fit lid, set lever to down, engage lid_pins, set lever to up, fit hood")]
    [InlineData("lever at down or hood out", "fit lid, engage lid_pins, fit hood")]
    public void Of_a_choice_that_the_refit_has_the_first_control_is_set_where_no_way_is_open_by_itself(string needs, string refit) => Assert.Equal(
        refit,
        string.Join(", ", Checked.Stage(
            $$"""
            control brake "brake" { off, on }
            control lever "lever" { up, down }
            part hood "hood"
            part lid "lid" { held by 2 pin as lid_pins { refit needs {{needs}} } }
            """,
            "remove hood release lid_pins remove lid").Refit));

    [Fact]
    public void A_rule_that_holds_neither_on_the_bench_nor_in_the_machine_is_told_of_the_bench_where_the_work_was_done()
    {
        var found = Checked.Stage(
            """
            part cover "cover" { held by 2 pin as cover_pins }
            part hood "hood" { behind cover  part lamp "lamp" }
            """,
            "release cover_pins remove cover remove hood remove lamp",
            "refit { fit lamp after engage cover_pins }").OnlyFinding;

        Assert.Equal("`fit lamp` cannot wait for `engage cover_pins`", found.Message);
        Assert.Contains(found.Related, related => related.Label.StartsWith("`fit hood` goes after `fit lamp`", StringComparison.Ordinal));
    }

    [Fact]
    public void A_guard_that_is_still_off_is_told_with_what_holds_it_and_not_with_what_is_wired_to_it() => Assert.Equal(
        ["PRC4004 the mains is wanted live while the hood is not in place yet and `hood_pins` is not closed and tight yet"],
        Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            part hood "hood" { held by 2 pin as hood_pins  wired by 1 plug_2 as horn_plug on none }
            part lamp "lamp" { behind hood  wired by 1 plug_2 as lamp_plug on mains }
            """,
            "release hood_pins unplug horn_plug remove hood isolate mains unplug lamp_plug",
            """refit { check "It lights." needs mains live before fit hood }""").Findings);
}
