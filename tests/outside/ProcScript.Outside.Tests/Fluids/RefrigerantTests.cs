using ProcScript.Analysis;
using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Plans;
using ProcScript.Model.Sources;

namespace ProcScript.Outside.Tests.Fluids;

/// <summary>What is asked of a refrigerant service, as it comes out on a card.</summary>
public sealed class RefrigerantTests
{
    /// <summary>95 % of the charge on the plate must come out (SAE J2788, from memory): worked by hand.</summary>
    [Theory]
    [InlineData("0.85 ± 0.015 kg", "0.8075 kg")]
    [InlineData("600 ± 15 g", "570 g")]
    [InlineData("30 ± 0.5 oz", "28.5 oz")]
    public void Ninety_five_per_cent_of_the_plate_has_to_come_out(string plate, string least) => Assert.Equal(least, Assert.Single(PlanOf(plate).Fluids).LeastRecovered);

    /// <summary>The accuracy of 15 g is the one that is printed as 0.5 oz (from memory); 1 oz is 28.349 523 125 g (16 CFR 500.19, read).</summary>
    [Fact]
    public void The_accuracy_in_grams_is_the_one_in_ounces() =>
        Assert.Equal(0.5, Math.Round(RefrigerantService.ChargeAccuracy / Model.Quantities.Units.Find("oz")!.Factor, 1));

    private static Plan PlanOf(string charge)
    {
        var report = LibraryCheck.Run(
            MemorySourceStore.Of(
                "cooler.proc",
                $$"""
                tool spanner_19 "19 mm open spanner"
                line union "union" { tool spanner_19 }
                machine cooler "cooler" {
                  fluid gas "refrigerant" {
                    hazard refrigerant
                    charge {{charge}}
                    empty "Recover by a certified machine."
                    fill "Charge by weight."
                  }
                  part box "cooler box" { piped by 2 union as unions carries gas }
                }
                procedure box_out "Take the box out" on cooler {
                  stage "Box" {
                    empty gas
                    disconnect unions
                    remove box
                  }
                }
                """),
            TestContext.Current.CancellationToken);
        return Assert.Single(report.Procedures).CreatePlan()!;
    }
}
