using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

public class PlanListTests
{
    private static readonly Plan Sample = PlanOf.Text(SampleText.All);

    [Fact]
    public void The_plan_says_what_it_is_about()
    {
        Assert.Equal(("case_out", "Take the case out"), (Sample.Job, Sample.Title));
        Assert.Equal(("gearbox", "Gearbox G1"), (Sample.Machine, Sample.MachineTitle));
        Assert.Equal([new PlanOption("shield", "heat shield", false)], Sample.Variant);
        Assert.Equal(["Replace the case"], Sample.Goals);
        Assert.Equal([new PlanAlert("warning", "Two people for the lift.")], Sample.Alerts);
        Assert.Equal(2, Sample.People);
        Assert.Equal(["x.proc"], Sample.Sources);
    }

    [Fact]
    public void Bags_hold_what_comes_off_loose_and_goes_back() => Assert.Equal(
        [
            "1 Guard: 4 × bolt cap, 4 × M8 × 25 bolt",
            "2 Motor: 3 × M8 × 25 bolt, 1 × M8 × 25 bolt",
            "3 Case: 10 × push-in clip, 6 × M8 × 25 bolt",
            "4 Case: 2 × M8 × 60 bolt",
        ],
        Sample.Bags.Select(bag =>
            $"{bag.Number} {bag.Stage}: {string.Join(", ", bag.Contents.Select(line => $"{line.Count} × {line.Title}"))}"));

    [Fact]
    public void Steps_know_the_bags_they_fill_and_empty()
    {
        Assert.Equal([4], Sample.Step("Undo 2 × M8 × 60 bolt").Bags);
        Assert.Equal([4], Sample.Step("Fasten 2 × M8 × 60 bolt").EmptiesBags);
        Assert.Equal([3], Sample.Step("Fasten 6 × M8 × 25 bolt").Bags);
        Assert.Empty(Sample.Step("Fasten 6 × M8 × 25 bolt").EmptiesBags);
        Assert.Equal([3], Sample.Step("Engage 10 × push-in clip").EmptiesBags);
        Assert.Empty(Sample.Step("Undo 3 × stretch bolt").Bags);
        Assert.Empty(Sample.Step("Release 1 × moulded hook").Bags);
    }

    [Fact]
    public void Tools_stand_in_order_of_first_use()
    {
        var steps = Sample.AllSteps().Count;
        Assert.Equal(
            [
                new PlanTool("breaker bar, 600 mm", 1, steps) { OfJob = true },
                new PlanTool("13 mm socket", 6, 12),
                new PlanTool("trim lever", 15, 2),
                new PlanTool("torque wrench, 18 N·m to 40 N·m", Sample.Step("Fasten 3 × stretch bolt").Number, 7),
            ],
            Sample.Tools);
    }

    [Fact]
    public void The_order_list_says_why_each_is_needed() => Assert.Equal(
        ["1 case, replaced", "3 stretch bolt, single use", "2 cable tie, destroyed", "4 seal ring, single use", "2 push-in clip, spare"],
        Sample.Orders.Select(line => $"{line.Count} {line.Title}, {line.Reason}"));

    [Theory]
    [InlineData(100, 7)] // 100 × 0.07 is a little more than 7 in binary fractions.
    [InlineData(101, 8)]
    public void Spares_are_whole_pieces(int pins, int spares)
    {
        var plan = PlanOf.Text($$"""
            clip pin "push-in clip" { spare 7 % }
            machine rig "Rig" { part lid "lid" { held by {{pins}} pin as lid_pins } }
            procedure p "P" on rig {
              stage "S" {
                release lid_pins
                remove lid
              }
            }
            """);

        Assert.Equal([spares], plan.Orders.Select(line => line.Count));
    }

    [Fact]
    public void Amounts_of_one_supply_are_added() => Assert.Equal(
        [("gear oil", "30 mL"), ("cloth tape", "0.6 m")],
        Sample.Consumables.Select(line => (line.Title, line.Amount)));

    [Fact]
    public void Amounts_in_other_units_are_added_and_other_dimensions_stand_apart()
    {
        var plan = PlanOf.Text("""
            supply glue "glue"
            supply tie "cable tie"
            machine rig "Rig" { part pump "pump" }
            procedure p "P" on rig {
              uses 1 L of glue
              stage "S" {
                task "One." { uses 250 mL of glue }
                task "Two." { uses 30 g of glue }
                task "Three." { uses 2 of tie }
                task "Four." { uses 1 of tie }
              }
            }
            """);

        Assert.Equal(
            [("glue", "1.25 L", "1"), ("glue", "30 g", "2"), ("cable tie", "3 pieces", "3 4")],
            plan.Consumables.Select(line => (line.Title, line.Amount, string.Join(' ', line.Steps))));
        Assert.Equal(["1 piece of cable tie"], plan.Step("Four.").Consumes);
    }

    [Fact]
    public void Protective_equipment_is_listed_once() => Assert.Equal(["safety shoes", "eye protection"], Sample.Ppe);

    [Fact]
    public void Energies_fluids_and_controls_know_their_steps()
    {
        var mains = Sample.Energies[0];
        Assert.Equal(
            ("mains", "Pull the plug.", "30 s", "Measure at the terminals.", "< 1 V", "Put the plug in."),
            (mains.Name, mains.Isolate, mains.Wait, mains.Verify, mains.Limits, mains.Restore));
        Assert.Equal(
            (Sample.Step("Isolate the 230 V mains").Number, Sample.Step("Restore the 230 V mains").Number),
            (mains.IsolatedAt, mains.RestoredAt));
        Assert.Equal("shop air", Sample.Energies[1].Title);
        Assert.Equal(
            new PlanFluid("gear_oil", "gear oil", "2.0 ± 0.1 L", "Open the drain.", "Fill to the mark.", 1, Sample.AllSteps().Count - 1)
            {
                FillTo = "2.0 ± 0.1 L",
                Band = "1.9 to 2.1 L",
                Changes = Sample.Fluids[0].Changes,
            },
            Assert.Single(Sample.Fluids));
        Assert.Equal("neutral", Assert.Single(Sample.Controls).Home);
        Assert.Equal(["neutral", "first gear"], Sample.Controls[0].Positions);
    }

    [Fact]
    public void A_lift_weighs_what_is_still_inside()
    {
        // The case of 30 kg with the fan of 1 kg; the motor is out already, and goes back into a case that stands in its place.
        Assert.Equal(new PlanLift("case", 31, Sample.Step("Remove the case").Number, 2), Sample.HeaviestLift);
        Assert.Equal(8, Sample.Step("Remove the motor").Kilograms);
        Assert.Equal(31, Sample.Step("Fit the new case").Kilograms);
        // Of what swings aside people know the whole mass, although its hinge bears half of it.
        Assert.Equal(12, Sample.Step("Move the guard aside").Kilograms);
    }

    [Fact]
    public void A_discarded_joint_is_scrap_and_in_no_bag()
    {
        var plan = PlanOf.Text(SampleText.Catalog + """
            machine rig "Rig" { part lid "lid" { held by 2 m8x25 as lid_bolts  held by 4 pin as lid_pins } }
            procedure p "P" on rig {
              stage "Lid" { undo lid_bolts  release lid_pins  discard lid_pins because "The new lid has **none**."  remove lid }
            }
            """);

        Assert.Equal([new PlanDiscard("4 × push-in clip (lid)", "The new lid has **none**.") { Item = "lid_pins", After = 2 }], plan.Discards);
        Assert.Equal("4 × push-in clip", plan.Step("Release 4 × push-in clip").Scrap);
        Assert.Equal(["M8 × 25 bolt"], Assert.Single(plan.Bags).Contents.Select(line => line.Title));
        Assert.DoesNotContain(plan.Orders, line => line.Title == "push-in clip");
        Assert.Equal(0, plan.Step("Release 4 × push-in clip").Mirror);
    }

    [Fact]
    public void A_replaced_joint_is_ordered_and_in_no_bag()
    {
        var plan = PlanOf.Text(SampleText.Catalog + """
            machine rig "Rig" { part lid "lid" { held by 2 m8x25 as lid_bolts } }
            procedure p "P" on rig { stage "Lid" { undo lid_bolts  replace lid_bolts  remove lid } }
            """);

        Assert.Empty(plan.Bags);
        Assert.Equal("Replace 2 × M8 × 25 bolt", plan.Strip[0].Steps[1].Text);
        Assert.Equal(["2 × M8 × 25 bolt"], plan.Step("Fasten 2 × M8 × 25 bolt").NewParts.Select(part => part.Text));
        Assert.Equal(("M8 × 25 bolt", 2, "replaced"), plan.Orders.Select(line => (line.Title, line.Count, line.Reason)).Single());
    }

    [Fact]
    public void A_discarded_part_takes_what_held_it_along()
    {
        var plan = PlanOf.Text(SampleText.Catalog + """
            machine rig "Rig" {
              part lid "lid" { held by 2 m8x25 as lid_bolts }
              part cover "cover" { mass 2 kg  held by 2 m8x60 as cover_bolts  part badge "badge" { mass 1 kg } }
            }
            procedure p "P" on rig {
              stage "Lid" { undo lid_bolts  undo cover_bolts  remove cover  discard cover because "Obsolete." }
            }
            """);

        Assert.Equal(["M8 × 25 bolt"], Assert.Single(plan.Bags).Contents.Select(line => line.Title));
        Assert.Equal(["2 × M8 × 60 bolt", "cover"], plan.Strip[0].Steps.Select(step => step.Scrap).Where(scrap => scrap.Length > 0));
        Assert.Equal([new PlanDiscard("cover", "Obsolete.") { Item = "cover", After = 3 }], plan.Discards);
        Assert.Equal(3, plan.HeaviestLift?.Kilograms);
        Assert.Equal(["Fasten 2 × M8 × 25 bolt"], plan.Refit.SelectMany(card => card.Steps).Select(step => step.Text));
    }

    [Fact]
    public void A_job_without_a_step_has_a_plan()
    {
        var plan = PlanOf.Text("""
            machine rig "Rig" { part lid "lid" }
            procedure p "P" on rig { }
            """);

        Assert.Empty(plan.AllSteps());
        Assert.Equal(new PlanTimes(0, 0, 0, 0, 0, 0, 0, 0), plan.Times);
        Assert.Null(plan.HeaviestLift);
    }

    [Fact]
    public void A_job_of_a_check_alone_closes_out_with_it()
    {
        var plan = PlanOf.Text("""
            machine rig "Rig" { part lid "lid" }
            procedure p "P" on rig { refit { check "The lid is tight." } }
            """);

        Assert.Equal(("Close out", "Check: The lid is tight."), plan.Refit.Select(card => (card.Title, card.Steps[0].Text)).Single());
    }

    [Fact]
    public void An_unproven_procedure_has_no_plan()
    {
        var store = Model.Sources.MemorySourceStore.Of("x.proc", SampleText.Catalog + """
            machine rig "Rig" { part lid "lid" { held by 2 m8x25 as lid_bolts } }
            procedure p "P" on rig { stage "Lid" { remove lid } }
            """);

        var report = LibraryCheck.Run(store, TestContext.Current.CancellationToken);

        Assert.Null(Assert.Single(report.Procedures).CreatePlan());
    }

    [Fact]
    public void The_map_shows_what_hides_what()
    {
        Assert.Equal(
            [
                new PlanMapNode("guard", "guard", Sample.Step("Move the guard aside").Number, "aside", false),
                new PlanMapNode("motor", "motor", Sample.Step("Remove the motor").Number, "off", false),
                new PlanMapNode("case", "case", Sample.Step("Remove the case").Number, "off", true),
            ],
            Sample.Map.Nodes);
        // The motor lies in the case.
        Assert.Equal([new PlanMapEdge("guard", "motor"), new PlanMapEdge("guard", "case")], Sample.Map.Edges);
    }
}
