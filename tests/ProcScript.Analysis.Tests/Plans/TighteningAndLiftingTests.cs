using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

public class TighteningAndLiftingTests
{
    private static readonly Plan Job = PlanOf.Text("""
        tool socket_16 "16 mm socket" { size 16 mm }
        fastener head_bolt "head bolt" { thread M10  grade 10.9  oiled  drive socket_16  torque 20, 35 N.m + 90°  pattern inside out }
        fastener pump_bolt "pump bolt" { thread M10  grade 8.8  drive socket_16  torque 44 N.m }
        machine press "press" {
          part head "head" { mass 34 kg  reach 50 cm  grip good  held by 10 head_bolt as head_bolts }
          part pump "pump" { mass 12 kg  held by 4 pump_bolt as pump_bolts { thread locker } }
          part bed "bed" { mass 29 kg }
        }
        procedure off "All off" on press {
          people 2
          stage "All" {
            undo head_bolts
            remove head { hoist }
            undo pump_bolts { refit { pattern star } }
            remove pump
            remove bed
          }
        }
        """);

    private static PlanStep Refit(string text) => Job.Refit.SelectMany(card => card.Steps).Single(step => step.Text == text);

    [Fact]
    public void Stages_and_angles_stand_one_after_the_other() =>
        Assert.Equal("20 N·m (14.8 lbf·ft), then 35 N·m (25.8 lbf·ft), then a further 90°", Refit("Fasten 10 × head bolt").Torque);

    [Fact]
    public void What_goes_on_the_thread_and_in_what_order_stands_on_the_refit()
    {
        Assert.Equal(
            [
                "Lightly oil the threads and the face under the head.",
                "Tighten from the middle outwards.",
                "Take all of them through one stage before the next.",
                "Mark the heads before the angle stage.",
            ],
            Refit("Fasten 10 × head bolt").How);
        Assert.Equal(
            ["Put thread locker on the clean, dry threads.", "Tighten in a star pattern: each one opposite the last."],
            Refit("Fasten 4 × pump bolt").How);
        Assert.All(Job.Strip.SelectMany(card => card.Steps), step => Assert.Empty(step.How));
    }

    [Fact]
    public void An_angle_takes_a_gauge()
    {
        Assert.Equal(["16 mm socket", "torque wrench", "angle gauge"], Refit("Fasten 10 × head bolt").Tools);
        Assert.Equal(["16 mm socket", "torque wrench"], Refit("Fasten 4 × pump bolt").Tools);
    }

    /// <summary>34 kg at a reach of 50 cm: 23 kg × 25/50 = 11.5 kg for one.</summary>
    [Fact]
    public void A_lift_shows_hoist_and_limit_where_they_matter()
    {
        var head = Refit("Fit the head");

        Assert.True(head.Hoist);
        Assert.Equal(11.5, head.LiftLimit);
        Assert.True(Job.HeaviestLift!.Hoist);
        Assert.Equal((null, false), (Refit("Fit the pump").LiftLimit, Refit("Fit the pump").Hoist));
    }

    [Fact]
    public void The_people_of_the_job_do_the_lifts_that_are_too_heavy_for_one()
    {
        Assert.Equal((2, 23), (Refit("Fit the bed").People, Refit("Fit the bed").LiftLimit!.Value));
        Assert.Equal(1, Refit("Fit the pump").People);
    }
}
