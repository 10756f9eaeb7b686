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
        Assert.Equal(["16 mm socket", "torque wrench", "angle gauge", "paint marker"], Refit("Fasten 10 × head bolt").Tools);
        Assert.Equal(["16 mm socket", "torque wrench"], Refit("Fasten 4 × pump bolt").Tools);
    }

    [Fact]
    public void A_lift_by_hoist_tells_of_no_limit_for_hands()
    {
        var head = Refit("Fit the head");

        Assert.Equal((true, null, false), (head.Hoist, head.LiftLimit, head.TooHeavy));
        Assert.True(Job.HeaviestLift!.Hoist);
        Assert.Equal((null, false), (Refit("Fit the pump").LiftLimit, Refit("Fit the pump").Hoist));
    }

    /// <summary>Two lift two thirds of the sum: 2 × 23 kg × 2/3 = 30.7 kg.</summary>
    [Fact]
    public void The_people_of_the_job_do_the_lifts_that_are_too_heavy_for_one_and_the_limit_is_theirs()
    {
        Assert.Equal((2, 30.7), (Refit("Fit the bed").People, Refit("Fit the bed").LiftLimit!.Value));
        Assert.Equal(1, Refit("Fit the pump").People);
    }

    /// <summary>What goes aside stays on one end, which bears half; the limit is told for what hands lift, and what is beyond it is said to be so.</summary>
    [Theory]
    [InlineData("aside door", "people 2", 50, 25.0, 30.7, false)]
    [InlineData("aside door", "people 1", 50, 25.0, 23.0, true)]
    [InlineData("remove door", "people 2", 50, null, 30.7, true)]
    [InlineData("remove door", "people 2  reach 50 cm", 50, null, 15.3, true)]
    [InlineData("remove door", "people 2  hoist", 50, null, null, false)]
    public void What_is_told_of_a_lift_is_one_statement(string step, string how, double mass, double? lifted, double? limit, bool tooHeavy)
    {
        var plan = PlanOf.Text($$"""
            machine shed "Shed" { part door "door" { mass 50 kg  aside "Swing it." } }
            procedure p "P" on shed { stage "S" { {{step}} { {{how}} } } }
            """);

        var told = plan.Strip[0].Steps[0];
        Assert.Equal((mass, lifted, limit, tooHeavy), (told.Kilograms, told.Lifted, told.LiftLimit, told.TooHeavy));
    }
}
