using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

public class StepTests
{
    private static readonly Plan Sample = PlanOf.Text(SampleText.All);

    [Fact]
    public void The_strip_says_what_to_do_in_plain_words() => Assert.Equal(
        [
            "Make safe: Drain the gear oil; Set the shift lever to first gear; Isolate the 230 V mains; Isolate the shop air",
            "Guard: Release 4 × bolt cap; Undo 4 × M8 × 25 bolt; Move the guard aside",
            "Motor: Undo 3 × M8 × 25 bolt; Undo 1 × M8 × 25 bolt; Remove the motor",
            "Case: Unplug 1 × 2-way connector; Disconnect 2 × union; Cut 1 × taped wrap; Cut 2 × cable tie; Release 10 × push-in clip; "
                + "Release 1 × moulded hook; Undo 6 × M8 × 25 bolt; Undo 2 × M8 × 60 bolt; Undo 3 × stretch bolt; Remove the case",
        ],
        Sample.Strip.Select(Words));

    [Fact]
    public void The_work_says_what_to_do_in_plain_words() =>
        Assert.Equal("Work: Replace the case; Clean the motor; Measure oil flow; Write down the serial number.", Words(Sample.Work));

    [Fact]
    public void The_refit_says_what_to_do_in_plain_words() => Assert.Equal(
        [
            "Case: Fit the new case; Fasten 3 × stretch bolt; Fasten 2 × M8 × 60 bolt; Fasten 6 × M8 × 25 bolt; Engage 1 × moulded hook; "
                + "Engage 10 × push-in clip; Renew 2 × cable tie; Renew 1 × taped wrap; Connect 2 × union; Plug in 1 × 2-way connector",
            "Motor: Fit the motor; Fasten 1 × M8 × 25 bolt; Fasten 3 × M8 × 25 bolt",
            "Guard: Move the guard back; Fasten 4 × M8 × 25 bolt; Engage 4 × bolt cap",
            "Return to service: shop air and 230 V mains; refill: gear oil: Restore the shop air; Check: The lever moves freely.; Restore the 230 V mains; Set the shift lever to neutral; "
                + "Fill the gear oil to 2.0 ± 0.1 L",
            "Close out: Check: No drip.",
        ],
        Sample.Refit.Select(Words));

    [Fact]
    public void Steps_are_numbered_through_and_know_their_mirror()
    {
        var steps = Sample.AllSteps();
        Assert.Equal(Enumerable.Range(1, steps.Count), steps.Select(step => step.Number));
        Assert.Equal(Sample.Step("Connect 2 × union").Number, Sample.Step("Disconnect 2 × union").Mirror);
        Assert.Equal(Sample.Step("Disconnect 2 × union").Number, Sample.Step("Connect 2 × union").Mirror);
        Assert.Equal(0, Sample.Step("Measure oil flow").Mirror);
    }

    [Fact]
    public void Torque_is_given_where_something_is_tightened()
    {
        Assert.Equal("24 ± 2 N·m (17.7 ± 1.5 lbf·ft)", Sample.Step("Fasten 2 × M8 × 60 bolt").Torque);
        Assert.Equal("18 N·m (13.3 lbf·ft)", Sample.Step("Connect 2 × union").Torque);
        Assert.All(Sample.Strip.SelectMany(card => card.Steps), step => Assert.Equal("", step.Torque));
    }

    [Fact]
    public void New_parts_scrap_and_what_is_used_stand_at_their_steps()
    {
        Assert.Equal(["1 × case"], Sample.Step("Fit the new case").NewParts.Select(part => part.Text));
        Assert.Equal("case", Sample.Step("Remove the case").Scrap);
        Assert.Equal(["3 × stretch bolt"], Sample.Step("Fasten 3 × stretch bolt").NewParts.Select(part => part.Text));
        Assert.Equal("3 × stretch bolt", Sample.Step("Undo 3 × stretch bolt").Scrap);
        Assert.Equal(["2 × cable tie"], Sample.Step("Renew 2 × cable tie").NewParts.Select(part => part.Text));
        Assert.Empty(Sample.Step("Renew 1 × taped wrap").NewParts);
        Assert.Equal(["0.6 m of cloth tape"], Sample.Step("Renew 1 × taped wrap").Consumes);
        Assert.Equal(["4 × seal ring"], Sample.Step("Connect 2 × union").NewParts.Select(part => part.Text));
        Assert.Equal(["10 mL of gear oil"], Sample.Step("Connect 2 × union").Consumes);
        Assert.Equal("4 × seal ring", Sample.Step("Disconnect 2 × union").Scrap);
        Assert.Equal("", Sample.Step("Undo 6 × M8 × 25 bolt").Scrap);
    }

    [Fact]
    public void Each_direction_has_its_own_how_and_its_own_checks()
    {
        Assert.Equal(["Pull straight.", "Front first."], Sample.Step("Release 10 × push-in clip").How);
        Assert.Equal(["Push until it clicks.", "Rear first."], Sample.Step("Engage 10 × push-in clip").How);
        Assert.Equal(["Swing it left."], Sample.Step("Move the guard aside").How);
        Assert.Empty(Sample.Step("Move the guard back").How);
        Assert.Empty(Sample.Step("Disconnect 2 × union").Checks);
        Assert.Equal(["Both unions dry."], Sample.Step("Connect 2 × union").Checks);
    }

    [Fact]
    public void What_the_trade_always_checks_stands_where_the_author_says_nothing()
    {
        Assert.Equal(["Tug at the plug body, never the wires: it holds."], Sample.Step("Plug in 1 × 2-way connector").Checks);
        Assert.Empty(Sample.Step("Isolate the 230 V mains").Checks);
    }

    [Fact]
    public void Alerts_stand_at_the_step_they_warn_of()
    {
        Assert.Equal([new PlanAlert("danger", "Mains voltage kills.")], Sample.Step("Isolate the 230 V mains").Alerts);
        Assert.Equal([new PlanAlert("danger", "Mains voltage kills.")], Sample.Step("Restore the 230 V mains").Alerts);
        Assert.Equal([new PlanAlert("notice", "Paint chips.")], Sample.Strip[1].Steps[1].Alerts);
        Assert.Equal([new PlanAlert("danger", "It swings back.")], Sample.Step("Move the guard aside").Alerts);
        Assert.Equal([new PlanAlert("danger", "It swings back.")], Sample.Step("Move the guard back").Alerts);
    }

    [Fact]
    public void Of_several_alerts_the_worst_stands_first_and_of_equals_the_one_of_the_item()
    {
        var plan = PlanOf.Text("""
            machine rig "Rig" { part lid "lid" { notice "Glossy."  caution "Sharp." } }
            procedure p "P" on rig { stage "Lid" { caution "Hot."  remove lid { danger "Heavy." } } }
            """);

        Assert.Equal(["Heavy.", "Sharp.", "Hot.", "Glossy."], plan.Strip[0].Steps[0].Alerts.Select(alert => alert.Text));
        Assert.Equal(["Heavy.", "Sharp.", "Hot.", "Glossy."], plan.Refit[0].Steps[0].Alerts.Select(alert => alert.Text));
    }

    [Fact]
    public void Readings_have_their_limits_in_words()
    {
        Assert.Equal("< 1 V", Sample.Energies[Sample.Step("Isolate the 230 V mains").MakeSafe - 1].Limits);
        Assert.Equal(new PlanReading("Oil flow", "0.5 to 2.0 L/min"), Sample.Step("Measure oil flow").Reading);
        Assert.Equal(new PlanReading("Reading", "≤ 1 mL"), Sample.Step("Check: No drip.").Reading);
        Assert.Equal(new PlanReading("Amount taken out", ""), Sample.Step("Drain the gear oil").Reading);
        Assert.Equal(new PlanReading("Amount filled", "2.0 ± 0.1 L"), Sample.Step("Fill the gear oil to 2.0 ± 0.1 L").Reading);
    }

    [Fact]
    public void Tools_people_places_and_photos_stand_at_their_steps()
    {
        Assert.Equal(["13 mm socket", "trim lever"], Sample.Step("Undo 6 × M8 × 25 bolt").Tools);
        Assert.Equal(["13 mm socket", "torque wrench"], Sample.Step("Fasten 6 × M8 × 25 bolt").Tools);
        Assert.Equal(2, Sample.Step("Remove the case").People);
        Assert.Equal(2, Sample.Step("Fit the new case").People);
        Assert.Equal("bench", Sample.Step("Remove the motor").Store);
        Assert.Equal("guard, front face", Sample.Strip[1].Steps[1].Where);
        Assert.Equal("guard, front face", Sample.Step("Release 4 × bolt cap").Where);
        Assert.Equal(["Washers under the two left bolts"], Sample.Strip[1].Steps[1].Photos);
        Assert.Equal(
            [new PlanPhoto(Sample.Strip[1].Steps[1].Number, "Washers under the two left bolts")],
            Sample.AllSteps().Single(step => step.SeePhotos.Length > 0 && step.Mirror == Sample.Strip[1].Steps[1].Number).SeePhotos);
    }

    [Fact]
    public void Protective_equipment_stands_at_the_steps_of_both_directions_that_need_it()
    {
        Assert.Equal(["safety shoes"], Sample.JobPpe);
        Assert.Equal(
            ["Release 4 × bolt cap: eye protection", "Engage 4 × bolt cap: eye protection"],
            Sample.AllSteps().Where(step => step.Ppe.Length > 0).Select(step => $"{step.Text}: {string.Join(", ", step.Ppe)}"));
    }

    [Fact]
    public void Protective_equipment_of_an_energy_stands_where_it_goes_and_where_it_comes_back_and_that_of_the_job_nowhere_again()
    {
        var plan = PlanOf.Text("""
            machine rig "Rig" {
              energy mains "mains" { isolate "Off."  verify "Try it."  restore "On."  ppe "face shield" }
              part lid "lid" { ppe "gloves" }
            }
            procedure p "P" on rig { ppe "gloves"  stage "Lid" { isolate mains  remove lid { ppe "helmet" } } }
            """);

        Assert.Equal(
            ["isolate: face shield", "remove: helmet", "fit: helmet", "restore: face shield"],
            plan.AllSteps().Select(step => $"{step.Verb}: {string.Join(", ", step.Ppe)}"));
        Assert.Equal(["gloves", "face shield", "helmet"], plan.Ppe);
    }

    [Fact]
    public void Who_needs_what_runs_in_the_background_waits_for_it()
    {
        Assert.True(Sample.Step("Drain the gear oil").InBackground);
        Assert.Equal([Sample.Step("Drain the gear oil").Number], Sample.Step("Disconnect 2 × union").WaitsFor);
        Assert.Equal([Sample.Step("Clean the motor").Number], Sample.Step("Fit the motor").WaitsFor);
    }

    [Fact]
    public void Who_opens_a_joint_to_what_is_worked_on_in_the_background_waits_for_it()
    {
        var plan = PlanOf.Text(SampleText.Catalog + """
            machine rig "Rig" {
              part hood "hood"
              part pump "pump" { piped by 1 union as pipe { to hood } }
            }
            procedure p "P" on rig {
              stage "S" {
                clean hood in background { time 10 min }
                disconnect pipe
              }
            }
            """);

        Assert.Equal([plan.Step("Clean the hood").Number], plan.Step("Disconnect 1 × union").WaitsFor);
    }

    [Fact]
    public void A_step_knows_its_place_in_the_text()
    {
        var source = Sample.Step("Fit the new case").Source;
        Assert.Equal("x.proc", source.Path);
        Assert.StartsWith("remove case", SampleText.All.Split('\n')[source.Line - 1][(source.Column - 1)..]);
    }

    [Fact]
    public void What_goes_on_slack_is_tightened_by_a_later_step()
    {
        var plan = PlanOf.Text(SampleText.Catalog + """
            machine rig "Rig" {
              part pump "pump" {
                held by 1 m8x25 as clamp
                piped by 1 union as pipe { needs clamp slack }
              }
            }
            procedure p "P" on rig {
              stage "Pump" { loosen clamp  disconnect pipe  undo clamp  remove pump }
            }
            """);

        Assert.Equal(
            ["Fit the pump", "Run in 1 × M8 × 25 bolt, finger-tight", "Connect 1 × union", "Tighten 1 × M8 × 25 bolt"],
            plan.Refit[0].Steps.Select(step => step.Text));
        Assert.Equal("", plan.Refit[0].Steps[1].Torque);
        Assert.Equal("22 ± 2 N·m (16.2 ± 1.5 lbf·ft)", plan.Refit[0].Steps[3].Torque);
    }

    [Fact]
    public void What_strip_put_in_says_what_for()
    {
        var plan = PlanOf.Text(SampleText.Catalog + SampleText.Machine + """
            procedure p "P" on gearbox { stage "Fan" { warning "Sharp fan."  strip fan { store "shelf" } } }
            """);

        Assert.Equal(
            [
                "Release 4 × bolt cap: to undo 4 × M8 × 25 bolt", "Undo 4 × M8 × 25 bolt: to move the guard aside",
                "Move the guard aside: to remove the fan", "Undo 2 × M8 × 25 bolt: to remove the fan", "Remove the fan: ",
            ],
            plan.Strip[0].Steps.Select(step => $"{step.Text}: {step.Because}"));
        Assert.All(plan.Strip[0].Steps, step => Assert.True(step.Derived));
        Assert.Equal(["Sharp fan."], plan.Strip[0].Steps[0].Alerts.Select(alert => alert.Text));
        Assert.Empty(plan.Strip[0].Steps[^1].Alerts);
        Assert.Equal("shelf", plan.Strip[0].Steps[^1].Store);
    }

    [Fact]
    public void A_control_set_for_the_refit_says_what_for()
    {
        var plan = PlanOf.Text(SampleText.Catalog + """
            machine rig "Rig" {
              control tap "tap" { shut, open }
              part pump "pump" { refit needs tap at open  held by 1 m8x25 as clamp }
            }
            procedure p "P" on rig { stage "Pump" { undo clamp  remove pump } }
            """);
        var set = plan.Step("Set the tap to open");

        Assert.True(set.Derived);
        Assert.Equal("to fit the pump", set.Because);
        Assert.Equal("back to where it was; it was moved only to fit the pump", plan.Step("Set the tap to shut").Because);
    }

    private static string Words(PlanStage card) => $"{card.Title}: {string.Join("; ", card.Steps.Select(step => step.Text))}";
}
