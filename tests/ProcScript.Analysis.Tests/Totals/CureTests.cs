using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;

namespace ProcScript.Analysis.Tests.Totals;

public class CureTests
{
    private const string Rig = """
        supply paste "paste" { cure 30 min }
        tool key "key"
        bond glue "glue" { tool key  cure 1 h }
        line pasted "pasted union" { tool key  uses 5 mL of paste }
        connector sealed "sealed plug" { uses 1 of paste }
        fastener screw "screw" { drive key }
        clip cap "cap"
        machine rig "Rig" {
          energy mains "mains" { isolate "Off."  restore "On." }
          fluid oil "oil" { empty "Drain."  fill "Fill."  takes 10 min }
          part lid "lid" { held by 2 glue as lid_glue { covered by 2 cap as lid_caps }  held by 5 screw as lid_screws }
          part box "box" { held by 1 glue as box_glue   wired by 1 sealed as box_plug on mains }
          part tank "tank" { piped by 1 pasted as tank_pipe carries oil }
          part screen "screen"
          part panel "panel" { behind screen  held by 1 glue as panel_glue }
        }

        """;

    [Fact]
    public void The_cover_waits_until_the_joint_under_it_has_cured()
    {
        var plan = Of("release lid_caps  cut lid_glue  undo lid_screws");
        var (glue, caps, screws) = (plan.Step("Renew 2 × glue"), plan.Step("Engage 2 × cap"), plan.Step("Fasten 5 × screw"));

        Assert.Equal([glue.Number], caps.WaitsForCureOf);
        Assert.Empty(caps.WaitsFor);
        Assert.Equal(("1 h", 3600, 0), (glue.Cure!.Time, glue.Cure.Seconds, glue.Cure.Meanwhile));
        Assert.Equal([caps.Number], glue.Cure.Before);
        Assert.Empty(screws.WaitsForCureOf);
    }

    [Fact]
    public void The_energy_and_the_fluid_wait_for_the_joints_on_them()
    {
        var plan = Of("isolate mains  unplug box_plug  empty oil  disconnect tank_pipe");

        Assert.Equal([plan.Step("Plug in 1 × sealed plug").Number], plan.Step("Restore the mains").WaitsForCureOf);
        Assert.Equal([plan.Step("Connect 1 × pasted union").Number], plan.Step("Fill the oil").WaitsForCureOf);
    }

    [Fact]
    public void The_support_stays_until_what_it_holds_has_cured() =>
        Assert.Equal(
            ["Renew 1 × glue"],
            WaitedFor(Of("support box  cut box_glue  isolate mains  unplug box_plug  remove box", "unsupport box after restore mains"), "Take the support away from the box"));

    [Fact]
    public void The_second_half_of_a_joint_does_not_wait_for_the_first()
    {
        var plan = Of("release lid_caps  cut 1 of lid_glue  cut rest of lid_glue");

        var halves = plan.AllSteps().Where(step => step.Text == "Renew 1 × glue").ToList();
        Assert.Equal(2, halves.Count);
        Assert.Empty(halves[1].WaitsForCureOf);
        Assert.Equal(halves.Select(half => half.Number), plan.Step("Engage 2 × cap").WaitsForCureOf);
        Assert.Equal(halves[1].Number, halves[0].Cure!.Meanwhile);
    }

    [Fact]
    public void Other_work_goes_on_while_it_cures_and_the_times_say_so()
    {
        // The glue takes 2 × 20 s and cures 1 h; the screws take 40 s of that, and the job ends with waiting.
        var plan = Of("undo lid_screws  release lid_caps  cut lid_glue", "engage lid_caps before fasten lid_screws");
        var loose = Of("undo lid_screws  release lid_caps  cut lid_glue", "fasten lid_screws before engage lid_caps");

        Assert.Equal((40 + 3600 + 6 + 40, 3600), (plan.Times.Refit, plan.Times.Waiting));
        Assert.Equal((40 + 3600 + 6, 3600 - 40), (loose.Times.Refit, loose.Times.Waiting));
        Assert.Equal(loose.Step("Fasten 5 × screw").Number, loose.Step("Renew 2 × glue").Cure!.Meanwhile);
        Assert.Equal(3640, plan.Step("Renew 2 × glue").Seconds);
    }

    [Fact]
    public void The_end_of_the_job_waits_for_what_nothing_else_waits_for()
    {
        var plan = Of("cut box_glue");

        Assert.Equal((20, 20 + 3600), (plan.Times.Strip, plan.Times.Refit));
        Assert.Empty(plan.Step("Renew 1 × glue").Cure!.Before);
    }

    [Fact]
    public void What_comes_to_stand_in_front_does_not_load_it()
    {
        var plan = Of("remove screen  cut panel_glue");

        Assert.Empty(plan.Step("Fit the screen").WaitsForCureOf);
        Assert.Empty(plan.Step("Renew 1 × glue").Cure!.Before);
    }

    [Fact]
    public void The_longest_cure_counts()
    {
        var plan = PlanOf.Text("""
            supply quick "quick paste" { cure 10 min }
            supply slow "slow paste" { cure 45 min }
            tool key "key"
            bond glue "glue" { tool key  cure 20 min  uses 1 mL of quick }
            machine rig "Rig" { part lid "lid" { held by 1 glue as lid_glue { uses 2 mL of slow } } }
            procedure p "P" on rig { stage "S" { cut lid_glue } }
            """);

        Assert.Equal("45 min", plan.Step("Renew 1 × glue").Cure!.Time);
    }

    private static IEnumerable<string> WaitedFor(Plan plan, string step) =>
        plan.Step(step).WaitsForCureOf.Select(number => plan.AllSteps()[number - 1].Text);

    private static Plan Of(string steps, string rule = "") =>
        PlanOf.Text(Rig + $"procedure p \"P\" on rig {{ stage \"S\" {{ {steps} }} refit {{ {rule} }} }}");
}
