using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;

namespace ProcScript.Analysis.Tests.Bags;

public class WhichIsWhichTests
{
    private const string Rig = """
        tool key "key"
        fastener short "M8 × 25" { thread M8x1.25  length 25 mm  grade 8.8  drive key  torque 22 N.m }
        fastener long "M8 × 35" { thread M8x1.25  length 35 mm  grade 8.8  drive key  torque 22 N.m }
        fastener thin "M6 × 20" { thread M6x1  length 20 mm  grade 8.8  drive key  torque 9 N.m }
        machine rig "Rig" {
          part lid "lid" { held by 4 short as lid_bolts  held by 2 long as hinge_bolts  held by 2 thin as lid_screws }
          part door "door" { held by 2 short as door_bolts }
        }

        """;

    [Fact]
    public void Both_cards_say_which_bolt_is_which()
    {
        var plan = Of("stage \"Lid\" { undo lid_bolts  undo hinge_bolts  undo lid_screws }");

        var expected = (Piece: "M8 × 25, 8.8", Bag: 1, Not: new PlanLookAlike("M8 × 35, 8.8", 2));
        Assert.Equal(expected, Parts(plan.Step("Undo 4 × M8 × 25")));
        Assert.Equal(expected, Parts(plan.Step("Fasten 4 × M8 × 25")));
        Assert.Equal(("M8 × 35, 8.8", 2, new PlanLookAlike("M8 × 25, 8.8", 1)), Parts(plan.Step("Undo 2 × M8 × 35")));
        Assert.Null(plan.Step("Undo 2 × M6 × 20").Which);
    }

    [Fact]
    public void Nothing_is_said_where_the_look_alike_belongs_to_another_stage() =>
        Assert.All(
            Of("stage \"Lid\" { undo hinge_bolts }  stage \"Door\" { undo door_bolts }").AllSteps(),
            step => Assert.Null(step.Which));

    [Fact]
    public void Look_alikes_of_two_stages_that_go_back_on_one_card_are_told_apart()
    {
        // Stages of one title come back on one card.
        var plan = Of("stage \"Bolts\" { undo hinge_bolts }  stage \"Bolts\" { undo door_bolts }");

        Assert.Equal(2, plan.Strip.Length);
        Assert.Single(plan.Refit);
        Assert.Equal(("M8 × 35, 8.8", 1, new PlanLookAlike("M8 × 25, 8.8", 2)), Parts(plan.Step("Fasten 2 × M8 × 35")));
        Assert.Equal(("M8 × 25, 8.8", 2, new PlanLookAlike("M8 × 35, 8.8", 1)), Parts(plan.Step("Undo 2 × M8 × 25")));
    }

    private static (string Piece, int Bag, PlanLookAlike Not) Parts(PlanStep step) =>
        (step.Which!.Piece, step.Which.Bag, Assert.Single(step.Which.Not));

    private static Plan Of(string stages) => PlanOf.Text(Rig + $"procedure p \"P\" on rig {{ {stages} }}");
}
