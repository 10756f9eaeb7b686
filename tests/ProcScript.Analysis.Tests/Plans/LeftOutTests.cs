namespace ProcScript.Analysis.Tests.Plans;

/// <summary>What the cards say of steps that are left out because they are done already.</summary>
public sealed class LeftOutTests
{
    private const string Machine = """
        tool key "key"
        fastener bolt "bolt" { drive key }
        connector two_way "2-way plug"
        machine rig "Rig" {
          control slide "slide" { back, front }
          part lid "lid" { held by 4 bolt as lid_bolts at "rim"  wired by 1 two_way as lid_plug }
          part fan "fan" { behind lid  held by 2 bolt as fan_bolts }
        }
        procedure lid_off "Take the lid off" on rig {
          stage "Lid" { set slide to back where needed  unplug lid_plug { check "The plug is dry." }  undo lid_bolts  remove lid }
        }

        """;

    [Fact]
    public void A_call_of_which_nothing_is_left_is_one_line_on_the_next_card()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig {
              stage "Lid" { unplug lid_plug { check "The plug is dry." }  undo lid_bolts  remove lid }
              do lid_off where needed
              stage "Fan" { undo fan_bolts  remove fan }
            }
            """, procedure: 1);

        Assert.Equal(["Lid", "Fan"], plan.Strip.Select(card => card.Title));
        Assert.Empty(plan.Strip[0].LeftOut);
        var line = Assert.Single(plan.Strip[1].LeftOut);
        Assert.Equal("Take the lid off: already done at steps 1 to 3", line.Text);
        Assert.Equal(4, line.Before);
        Assert.Equal([1, 2, 3], line.Steps);
    }

    [Fact]
    public void What_is_left_out_of_a_call_stands_before_what_is_left_and_its_check_is_made()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig {
              stage "Plug" { unplug lid_plug  undo 1 of lid_bolts }
              stage "Fan" { do lid_off where needed  undo fan_bolts  remove fan }
            }
            """, procedure: 1);

        Assert.Equal(
            ["Check: The plug is dry.", "Undo 3 × bolt", "Remove the lid", "Undo 2 × bolt", "Remove the fan"],
            plan.Strip[1].Steps.Select(step => step.Text));
        var line = Assert.Single(plan.Strip[1].LeftOut);
        Assert.Equal("Already done at step 1: set the slide to back; unplug 1 × 2-way plug (lid)", line.Text);
        Assert.Equal(3, line.Before);
    }

    [Fact]
    public void A_line_that_nothing_follows_stands_at_the_end_of_the_last_card()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig {
              stage "Lid" { unplug lid_plug { check "The plug is dry." }  undo lid_bolts  remove lid  set slide to back where needed }
              do lid_off where needed
            }
            """, procedure: 1);

        Assert.Equal(["Already so at the start: set the slide to back", "Take the lid off: already done at steps 1 to 3"], plan.Strip[0].LeftOut.Select(line => line.Text));
        Assert.Equal([0, 0], plan.Strip[0].LeftOut.Select(line => line.Before));
    }

    [Fact]
    public void What_is_needed_everywhere_is_told_nowhere()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig { stage "Lid" { undo lid_bolts where needed  unplug lid_plug where needed  remove lid } }
            """, procedure: 1);

        Assert.All(plan.Strip, card => Assert.Empty(card.LeftOut));
        Assert.Equal(3, plan.Strip[0].Steps.Length);
    }
}
