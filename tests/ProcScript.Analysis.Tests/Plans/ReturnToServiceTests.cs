using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>What cards say of energies: how each stands, that it comes back, and what is open then.</summary>
public sealed class ReturnToServiceTests
{
    private const string Machine = """
        tool socket_13 "13 mm socket"
        fastener hex "hex bolt" { drive socket_13 }
        connector two_way "2-way connector"
        line hose "hose" { }
        machine rig "Rig" {
          energy mains "230 V mains" { isolate "Pull the plug."  verify "Press start."  restore "Put it in." }
          energy air "shop air" { isolate "Close the cock."  verify "Read the gauge."  restore "Open the cock." }
          fluid oil "gear oil" { charge 2.0 ± 0.1 L  empty "Drain it."  fill "Fill it." }
          control lever "lever" { up, down }
          part loom "loom"
          part guard "guard" { held by 4 hex as guard_bolts }
          part lamp "lamp" { held by 2 hex as lamp_bolts  wired by 1 two_way as lamp_plug { to loom } }
          part motor "motor" { wired by 1 two_way as motor_plug { to loom  on mains } }
        }

        """;

    [Fact]
    public void Each_card_says_how_every_energy_stands_and_what_becomes_of_it()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig {
              stage "Make safe" { isolate mains }
              stage "Guard" { undo guard_bolts  remove guard }
              stage "Motor" { isolate air  unplug motor_plug  remove motor }
              work { clean motor }
              refit { check "It runs." needs mains live }
            }
            """);

        Assert.Equal(
            [
                "Make safe | mains live; 1: isolated | air live",
                "Guard | mains isolated 1 | air live",
                "Motor | mains isolated 1 | air live; 4: isolated",
                "Work | mains isolated 1 | air isolated 4",
                "Motor; shop air comes back on | mains isolated 1 | air isolated 4; 10: live",
                "Guard | mains isolated 1 | air live 10",
                "Return to service: 230 V mains | mains isolated 1; 13: live | air live 10",
                "Close out | mains live 13 | air live 10",
            ],
            Cards(plan));
        Assert.Equal([new PlanEnergyTurn(1, "live", "isolated"), new PlanEnergyTurn(13, "isolated", "live")], plan.Energies[0].Turns);
        Assert.Equal((1, 13), (plan.Energies[0].IsolatedAt, plan.Energies[0].RestoredAt));
    }

    [Fact]
    public void The_list_of_an_energy_speaks_of_its_own_locks_and_says_which_others_stay()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig {
              stage "Make safe" { isolate mains  isolate air }
              stage "Motor" { unplug motor_plug  remove motor }
              refit { check "It runs." needs mains live, air live }
            }
            """);

        var back = plan.AllSteps().Where(step => step.Return is not null).ToDictionary(step => step.Item, step => step.Return!.Lines);
        Assert.Equal(
            [
                "shop air only: each lock and tag is taken off by the person who put it on. These stay locked: 230 V mains.",
                "Everyone concerned knows, before it starts, that the locks are off. Still isolated: 230 V mains.",
            ],
            Locks(back["air"]));
        Assert.Equal(
            [
                "230 V mains: each lock and tag is taken off by the person who put it on.",
                "Everyone concerned knows, before it starts, that the locks are off.",
            ],
            Locks(back["mains"]));

        static IEnumerable<string> Locks(IEnumerable<PlanSafetyLine> lines) => lines.Where(line => line.Action is "locks" or "tell").Select(line => line.Text);
    }

    [Fact]
    public void A_job_that_isolates_nothing_says_nothing_of_energies()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig { stage "Make safe" { undo guard_bolts  remove guard } }
            """);

        Assert.All(plan.Strip.Concat(plan.Refit), card => Assert.Empty(card.Energies));
        Assert.Equal("Make ready again", plan.Refit[0].Title);
    }

    [Theory]
    [InlineData("isolate mains", "Return to service: 230 V mains")]
    [InlineData("set lever to down  isolate mains  isolate air", "Return to service: shop air and 230 V mains")]
    [InlineData("empty oil", "Refill: gear oil")]
    [InlineData("empty oil  isolate mains", "Return to service: 230 V mains; refill: gear oil")]
    [InlineData("set lever to down", "Controls: lever")]
    [InlineData("isolate mains  undo guard_bolts", "Make ready again; 230 V mains comes back on")]
    [InlineData("isolate mains  isolate air  undo guard_bolts", "Make ready again; shop air and 230 V mains come back on")]
    [InlineData("undo guard_bolts", "Make ready again")]
    public void No_card_of_the_refit_is_called_make_safe(string steps, string title)
    {
        var plan = PlanOf.Text(Machine + $$"""
            procedure p "P" on rig {
              stage "Make safe" { {{steps}} }
              stage "Lamp" { undo lamp_bolts  unplug lamp_plug  remove lamp }
            }
            """);

        Assert.Equal(["Lamp", title], plan.Refit.Select(card => card.Title));
    }

    [Fact]
    public void What_is_open_when_an_energy_comes_back_is_named_with_the_step_that_closes_it()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig {
              stage "Lamp" { empty oil  undo 3 of guard_bolts  undo lamp_bolts  unplug lamp_plug  remove lamp }
              stage "Motor" { isolate mains  unplug motor_plug  remove motor }
              stage "Guard" { undo rest of guard_bolts }
              refit { restore mains before fit lamp }
            }
            """);
        var back = plan.Step("Restore the 230 V mains");

        Assert.Equal(
            [
                new PlanOpenItem("lamp", "out", plan.Step("Fit the lamp").Number),
                new PlanOpenItem("4 × hex bolt (guard)", "1 of 4 on", plan.Step("Fasten 3 × hex bolt").Number),
                new PlanOpenItem("1 × 2-way connector (lamp)", "open", plan.AllSteps().Single(step => step is { Item: "lamp_plug", Verb: "plug" }).Number),
                new PlanOpenItem("gear oil", "empty", plan.AllSteps().Count),
            ],
            back.Return!.StillOpen);
        Assert.StartsWith("Not everything is closed yet.", back.Return.Lines[1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_is_open_the_list_says_so()
    {
        var plan = PlanOf.Text(Machine + """
            procedure p "P" on rig {
              stage "Make safe" { isolate mains }
              stage "Lamp" { undo lamp_bolts  unplug lamp_plug  remove lamp }
              work { discard lamp because "The new rig has none." }
            }
            """);
        var back = plan.Step("Restore the 230 V mains").Return!;

        Assert.Empty(back.StillOpen);
        Assert.Equal("whole: Everything this job opened is closed and complete.", $"{back.Lines[1].Action}: {back.Lines[1].Text}");
        Assert.All(plan.AllSteps().Where(step => step.Verb != "restore"), step => Assert.Null(step.Return));
    }

    private static IEnumerable<string> Cards(Plan plan) => plan.Strip.Append(plan.Work).Concat(plan.Refit).Select(card =>
        $"{card.Title} | {string.Join(" | ", card.Energies.Select(Words))}");

    private static string Words(PlanEnergyState energy) =>
        $"{energy.Name} {energy.State}{(energy.Since > 0 ? $" {energy.Since}" : "")}{string.Concat(energy.Turns.Select(turn => $"; {turn.Step}: {turn.State}"))}";
}
