using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Tests.Refitting;

/// <summary>The props of the refit.</summary>
public sealed class PropTests
{
    [Fact]
    public void A_prop_stands_ready_right_before_its_part_wherever_a_rule_moves_that() => Assert.Equal(
        ["fit lid", "engage lid_pins", "support box", "fit box", "engage box_pins", "unsupport box"],
        Checked.Stage(
            """
            part lid "lid" { held by 2 pin as lid_pins }
            part box "box" { held by 2 pin as box_pins }
            """,
            "release lid_pins remove lid support box release box_pins remove box",
            "refit { fit box after engage lid_pins }").Refit);

    [Fact]
    public void What_was_propped_twice_comes_back_each_time_to_the_prop_that_it_came_from()
    {
        var check = Checked.Stage(
            """part strap "strap" { temporary }""",
            "fit strap support strap remove strap fit strap support strap remove strap");

        Assert.Equal(
            [4, 1],
            check.Only.Outcome.Refit!.Actions.Select(action => action.Origin).OfType<PropAgain>().Select(again => again.Support.Number));
    }

    [Fact]
    public void A_prop_that_is_not_there_cannot_be_taken_away() => Assert.Contains(
        "PRC3006",
        Checked.Stage("""part strap "strap" { temporary  held by 2 pin as strap_pins }""", "fit strap unsupport strap").Codes);
}
