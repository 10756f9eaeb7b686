using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;

namespace ProcScript.Analysis.Tests.Totals;

public class JobTimesTests
{
    // Two parts that have nothing to do with each other, so that two people can work on one each.
    private const string Rig = """
        fastener bolt "bolt" { }
        clip pin "pin" { time 4 s }
        machine rig "Rig" {
          energy mains "mains" { isolate "Off."  restore "On."  wait 1 min }
          fluid oil "oil" { empty "Drain."  fill "Fill."  takes 10 min  attended 2 min }
          part lid "lid" { held by 5 bolt as lid_bolts  held by 2 pin as lid_pins }
          part door "door" { held by 5 bolt as door_bolts  piped by 1 pipe as door_pipe { carries oil } }
        }
        line pipe "pipe" { }

        """;

    [Fact]
    public void Usual_times_hold_where_none_is_given() => Assert.Equal(
        [("Undo 5 × bolt", 40), ("Release 2 × pin", 8), ("Remove the lid", 30), ("Isolate the mains", 90)],
        Of("undo lid_bolts  release lid_pins  remove lid  isolate mains").Strip[0].Steps.Select(step => (step.Text, step.Seconds)));

    [Fact]
    public void The_time_of_an_action_is_for_the_whole_action_and_for_one_direction()
    {
        var plan = Of("undo lid_bolts { time 10 min }  release lid_pins { refit { time 1 min } }  remove lid");

        Assert.Equal([600, 8, 30], plan.Strip[0].Steps.Select(step => step.Seconds));
        Assert.Equal([30, 60, 40], plan.Refit[0].Steps.Select(step => step.Seconds));
        Assert.Equal((638, 0, 130, 768), (plan.Times.Strip, plan.Times.Work, plan.Times.Refit, plan.Times.OnePerson));
        Assert.Equal(plan.Times.Strip, plan.Strip[0].Seconds);
    }

    [Fact]
    public void What_runs_in_the_background_takes_only_its_attended_share_of_a_person()
    {
        // 2 min at the drain, 40 s and 8 s at the lid; then the pipe waits until the oil is out, at 10 min.
        var plan = Of("empty oil in background  undo lid_bolts  release lid_pins  disconnect door_pipe");

        Assert.Equal(600 + 30, plan.Times.Strip);
        Assert.Equal(600, plan.Strip[0].Steps[0].Seconds);
    }

    [Fact]
    public void A_job_does_not_end_before_what_runs_in_the_background() =>
        Assert.Equal(3600, Of("task \"Let it soak.\" in background { time 1 h }  undo lid_bolts  remove door_seal", """
              part door_seal "door seal"
            """).Times.OnePerson);

    [Fact]
    public void Two_people_share_what_does_not_hang_together()
    {
        var plan = Of("undo lid_bolts  undo door_bolts");

        Assert.Equal((160, 80), (plan.Times.OnePerson, plan.Times.Crew));
    }

    [Fact]
    public void Two_people_cannot_share_a_step_that_takes_both()
    {
        var plan = Of("undo lid_bolts { people 2 }  undo door_bolts");

        Assert.Equal((160, 160), (plan.Times.OnePerson, plan.Times.Crew));
    }

    [Fact]
    public void Nobody_begins_the_refit_before_the_strip_is_done() =>
        Assert.Equal(400 + 40, Of("undo lid_bolts { time 400 s }  undo door_bolts { time 10 s  refit { time 10 s } }").Times.Crew);

    private static Plan Of(string steps, string parts = "") => PlanOf.Text(
        Rig.Replace("  part door", parts + "  part door", StringComparison.Ordinal) + $"procedure p \"P\" on rig {{ stage \"S\" {{ {steps} }} }}");
}
