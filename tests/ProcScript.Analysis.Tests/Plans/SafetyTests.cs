using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>What a plan says of energies and hazards.</summary>
public sealed class SafetyTests
{
    private const string Library = """
        tool socket_13 "13 mm socket"
        fastener hex "hex bolt" { drive socket_13 }
        clip strut "strut clip" { hazard spring }
        connector squib "squib connector" { hazard restraint }

        machine cab "Cab" {
          energy ignition "ignition" { isolate "Pull the key."  verify "The dash stays dark."  restore "Put the key in." }
          energy battery "12 V battery" {
            after    ignition
            prepare  "Have the key of the flap."
            shutdown "Switch all users off."
            isolate  "Take the negative cable off."
            lock     "Hang your tag on the post."
            bleed    "Switch the lamps on."
            wait     10 min
            verify   "Measure at the posts." expect <= 0.5 V
            restore  "Refit the cable."
          }
          part loom "loom"
          part hatch "hatch" { hazard suspended_load  held by 2 strut as hatch_struts  held by 2 hex as hatch_bolts }
          part airbag "driver airbag" {
            hazard restraint
            warning "An airbag can break your arms. Carry it face up."
            held by 2 hex as airbag_bolts
            wired by 1 squib as airbag_plug { to loom  on battery }
          }
          part core "heater core" { hazard hot_surface  held by 2 hex as core_bolts }
        }

        procedure all_out "Take all out" on cab {
          goal replace airbag
          stage "Make safe" {
            isolate ignition
            isolate battery
          }
          stage "Hatch" {
            support hatch
            release hatch_struts
            undo hatch_bolts
            remove hatch
          }
          stage "Airbag" {
            unplug airbag_plug
            undo airbag_bolts
            remove airbag
            undo core_bolts
            remove core
          }
          work { replace airbag }
        }
        """;

    private static readonly Plan Job = PlanOf.Text(Library);

    [Fact]
    public void The_authors_words_come_in_the_order_of_the_rule()
    {
        var battery = Job.Energies[1];

        Assert.Equal(["ignition"], battery.After);
        Assert.Equal(
            [
                "prepare Have the key of the flap.", "shut down Switch all users off.", "isolate Take the negative cable off.",
                "lock Hang your tag on the post.", "release Switch the lamps on.", "wait 10 min.", "verify Measure at the posts.",
            ],
            battery.MakeSafe.Select(line => $"{line.Action} {line.Text}"));
        Assert.DoesNotContain(battery.MakeSafe, line => line.IsUsual);
    }

    [Fact]
    public void What_the_author_leaves_out_is_usual_and_marked()
    {
        var ignition = Job.Energies[0];

        Assert.Equal(["prepare", "shut down", "lock", "release"], ignition.MakeSafe.Where(line => line.IsUsual).Select(line => line.Action));
        Assert.All(ignition.MakeSafe, line => Assert.NotEmpty(line.Text));
        var back = Job.Step("Restore the ignition");
        Assert.Equal(["area", "people", "locks", "tell"], back.Return!.Lines.Where(line => line.IsUsual).Select(line => line.Action));
        Assert.Equal(["Put the key in."], back.How);
    }

    [Fact]
    public void They_come_back_the_other_way_round() =>
        Assert.True(Job.Energies[1].RestoredAt < Job.Energies[0].RestoredAt);

    [Fact]
    public void What_isolates_is_told_line_by_line_on_the_make_safe_card_and_the_step_leads_there()
    {
        var step = Job.Step("Isolate the 12 V battery");
        var battery = Job.Energies[step.MakeSafe - 1];

        Assert.Equal(
            ["Have the key of the flap.", "Switch all users off.", "Take the negative cable off.", "Hang your tag on the post.", "Switch the lamps on.", "10 min.", "Measure at the posts."],
            battery.MakeSafe.Select(line => line.Text));
        Assert.Equal("≤ 0.5 V", battery.Limits);
        Assert.Empty(step.How);
        Assert.Null(step.Reading);
    }

    [Fact]
    public void The_plan_lists_what_the_job_touches() => Assert.Equal(
        ["suspended_load: hatch", "spring: 2 × strut clip (hatch)", "restraint: 1 × squib connector (driver airbag), driver airbag", "hot_surface: heater core"],
        Job.Hazards.Select(hazard => $"{hazard.Word}: {string.Join(", ", hazard.Items)}"));

    [Fact]
    public void What_no_lock_can_hold_has_no_line_for_one()
    {
        var plan = PlanOf.Text("""
            machine oven "Oven" {
              energy gas "gas supply" { hazard pressure  isolate "Shut the cock."  bleed "Light a burner."  verify "It goes out."  restore "Open the cock." }
              energy spring "door spring" { hazard spring  isolate "Let the door down."  bleed "Hook it out."  verify "It hangs slack."  restore "Hook it in." }
              energy heat "stored heat" { isolate "Leave the door open."  verify "Read the dial."  restore "Close the door." }
              energy pin "door pin" { hazard spring  isolate "Push it in."  lock "Put the split pin through."  bleed "None."  verify "Pull at it."  restore "Let it out." }
              part seal "seal" { }
            }
            procedure out "Out" on oven { stage "Out" { isolate gas  isolate spring  isolate heat  isolate pin  remove seal } }
            """);

        Assert.Equal(
            ["gas supply", "door pin"],
            plan.Energies.Where(energy => energy.MakeSafe.Any(line => line.Action == "lock")).Select(energy => energy.Title));
        Assert.Equal(
            ["door pin", "gas supply"],
            plan.AllSteps().Where(step => step.Return?.Lines.Any(line => line.Action == "locks") == true).Select(step => step.ItemTitle).Order());
        Assert.DoesNotContain(
            plan.AllSteps().Where(step => step.ItemTitle is "door spring" or "stored heat").SelectMany(step => step.Return?.Lines ?? []),
            line => line.Text.Contains("lock", StringComparison.Ordinal));
    }

    [Fact]
    public void Only_a_battery_has_a_service_plug()
    {
        var plan = PlanOf.Text("""
            machine press "Press" {
              energy traction "400 V traction battery" { hazard high_voltage  isolate "Off."  restore "On." }
              energy mains "400 V three-phase mains" { hazard high_voltage  isolate "Off."  restore "On." }
              part seal "seal" { }
            }
            procedure out "Out" on press { stage "Out" { isolate traction  isolate mains  remove seal } }
            """);

        Assert.Equal(
            ["Whoever does the work keeps the service plug on them.", "Put your own lock or tag on the device. Its key stays with you."],
            plan.Energies.Select(energy => energy.MakeSafe.Single(line => line.Action == "lock").Text));
        Assert.Equal(
            ["kills", "service plug"],
            new[] { "kills", "service plug" }.Where(plan.Strip[0].Steps[0].Alerts[0].Text.Contains));
        Assert.DoesNotContain("plug", plan.Strip[0].Steps[1].Alerts[0].Text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("plug", plan.Refit[0].Steps.Single(step => step.Item == "mains").Alerts[0].Text, StringComparison.OrdinalIgnoreCase);
    }
}
