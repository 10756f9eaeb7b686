namespace ProcScript.Analysis.Tests.Refitting;

/// <summary>What an author's rules bring about in the refit, and what is said of those that can bring about nothing.</summary>
public sealed class RuleTests
{
    private const string Lids = """
        part lid "lid" { held by 2 bolt as lid_bolts { torque 5 N.m  covered by 2 cap as lid_caps } }
        part pan "pan" { held by 2 pin as pan_pins }
        """;

    private const string LidsOff = "release lid_caps undo lid_bolts remove lid release pan_pins remove pan";

    [Fact]
    public void The_torque_comes_once_more_while_a_wrench_still_gets_at_it() => Assert.Equal(
        ["fit pan", "engage pan_pins", "fit lid", "fasten lid_bolts", "retorque lid_bolts", "engage lid_caps"],
        Checked.Stage(Lids, LidsOff, "refit { retorque lid_bolts }").Refit);

    /// <summary>It waits for the last moment at which a wrench gets there, and what ends that does not wait for the close-out.</summary>
    [Fact]
    public void The_torque_that_comes_once_more_delays_nothing_else() => Assert.Equal(
        ["fit lid", "fasten lid_bolts", "retorque lid_bolts", "engage lid_caps", "fit pan", "engage pan_pins"],
        Checked.Stage(Lids, "release pan_pins remove pan release lid_caps undo lid_bolts remove lid", "refit { retorque lid_bolts }").Refit);

    [Theory]
    [InlineData("fit pan after fasten lid_bolts  check \"Clean.\" before fit pan", "check Clean.")]
    [InlineData("retorque lid_bolts before fit pan", "retorque lid_bolts")]
    public void What_is_done_before_an_action_stays_right_before_it_wherever_rules_move_that(string rules, string line) => Assert.Equal(
        ["fit lid", "fasten lid_bolts", line, "fit pan", "engage pan_pins", "engage lid_caps"],
        Checked.Stage(Lids, LidsOff, $"refit {{ engage lid_caps after engage pan_pins  {rules} }}").Refit);

    [Fact]
    public void A_check_before_what_went_off_in_pieces_comes_before_the_first_of_them() => Assert.Equal(
        ["fit pan", "check Clean.", "engage 1 of pan_pins", "engage 1 of pan_pins"],
        Checked.Stage(Lids, "release 1 of pan_pins release 1 of pan_pins remove pan", "refit { check \"Clean.\" before engage pan_pins }").Refit);

    [Fact]
    public void To_fasten_a_joint_is_not_to_tighten_it_where_that_is_a_step_of_its_own() => Assert.Equal(
        ["fit lid", "fasten lid_bolts", "check Straight.", "tighten lid_bolts", "engage lid_caps"],
        Checked.Stage(Lids, "release lid_caps loosen lid_bolts undo lid_bolts remove lid", "refit { check \"Straight.\" after fasten lid_bolts }").Refit);

    [Fact]
    public void A_rule_that_follows_from_two_needs_one_after_the_other_says_nothing_new() => Assert.Equal(
        "PRC8012",
        Checked.Stage(Lids, LidsOff, "refit { engage lid_caps after fit lid }").OnlyFinding.Rule.Code);

    [Fact]
    public void An_action_cannot_go_before_itself() => Assert.Equal(
        "PRC4003",
        Checked.Stage(Lids, LidsOff, "refit { fit lid before fit lid }").OnlyFinding.Rule.Code);

    [Fact]
    public void Who_snugs_a_joint_may_say_that_its_torque_comes_after_it_is_in() => Assert.Equal(
        ["fit pan", "engage pan_pins", "fit lid", "snug lid_bolts", "tighten lid_bolts", "engage lid_caps"],
        Checked.Stage(Lids, LidsOff, "refit { snug lid_bolts  fasten lid_bolts before tighten lid_bolts }").Refit);

    [Fact]
    public void A_rule_on_what_nobody_undid_is_told_even_where_another_step_was_left_out() => Assert.Contains(
        "PRC4002",
        Checked.Stage(
            Lids,
            "release lid_caps undo lid_bolts undo lid_bolts where needed remove lid",
            "refit { fasten pan_pins before fit lid  engage pan_pins before fit lid }").Codes);

    [Fact]
    public void A_test_goes_without_what_it_lets_stay_open() => Assert.Equal(
        ["fit lid", "restore e", "check It runs.", "isolate e", "plug fan_plug", "restore e"],
        Checked.Stage(
            """
            energy e "e" { isolate "Off."  verify "Dark."  restore "On." }
            part lid "lid"
            part fan "fan" { wired by 1 plug_2 as fan_plug on e }
            """,
            "isolate e unplug fan_plug remove lid",
            "refit { plug fan_plug after fit lid  test \"T\" before plug fan_plug { power e  check \"It runs.\"  while fan_plug open because \"It is in the way.\" } }").Refit);

    [Fact]
    public void Power_comes_back_over_what_the_author_lets_stay_open_and_over_nothing_else() => Assert.Equal(
        ["plug plug_1", "fit lid", "engage lid_clips", "restore e", "engage lid_pins"],
        Checked.Stage(
            """
            energy e "e" { isolate "Off."  verify "Dark."  restore "On." }
            part lid "lid" { held by 2 pin as lid_pins  held by 2 pin as lid_clips { at "rear" } }
            part p "p" { behind lid  wired by 1 plug_2 as plug_1 on e }
            """,
            "release lid_pins release lid_clips remove lid isolate e unplug plug_1",
            "refit { restore e while lid_pins open because \"One looks at the lamp.\"  restore e before engage lid_pins }").Refit);
}
