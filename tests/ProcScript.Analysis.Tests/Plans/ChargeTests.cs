using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>What a plan says of the charge of a fluid.</summary>
public sealed class ChargeTests
{
    private const string Library = """
        supply pag "PAG oil"
        supply dye "dye"
        line union "union"
        clip pin "pin"

        machine cooler "Cooler" {
          fluid gas "refrigerant" {
            hazard refrigerant
            charge 0.85 ± 0.02 kg
            with coil add 40 mL of pag
            with coil take 15 g
            with valve add 5 mL of dye
            with pump take 10 mL of pag
            empty "Recover it."
            fill  "Evacuate first."
          }
          fluid water "water" { charge 4 L  empty "Drain it."  fill "Fill it." }
          part box "box" {
            held by 2 pin as box_pins
            piped by 2 union as box_unions { carries gas }
            part coil "coil"  { held by 2 pin as coil_pins }
            part valve "valve" { held by 2 pin as valve_pins }
          }
          part pump "pump" { held by 2 pin as pump_pins }
        }

        """;

    [Fact]
    public void A_new_part_changes_the_charge_and_brings_its_supply()
    {
        var plan = Plan("remove coil", "replace coil");
        var gas = plan.Fluids[0];

        Assert.Equal(("0.85 ± 0.02 kg", "0.835 ± 0.020 kg", "0.815 to 0.855 kg", "0.8075 kg"), (gas.Charge, gas.FillTo, gas.Band, gas.LeastRecovered));
        Assert.Equal(["40 mL of PAG oil with the new coil", "15 g less with the new coil"], gas.Changes);
        Assert.Equal(["40 mL of PAG oil"], plan.Step("Fit the new coil").Consumes);
        Assert.Equal("40 mL", Assert.Single(plan.Consumables, line => line.Title == "PAG oil").Amount);
        var fill = plan.Step("Charge the refrigerant to 0.835 ± 0.020 kg");
        Assert.Equal(["Evacuate first.", "15 g less with the new coil."], fill.How);
        Assert.Equal("0.835 ± 0.020 kg", fill.Reading!.Limits);
        Assert.Equal(["Charged by weight to the nameplate, not to what came out."], fill.Checks);
        Assert.Equal(
            ["At least 0.8075 kg came out (95 % of the nameplate charge). If less, write down that the circuit may leak."],
            plan.Step("Recover the refrigerant").Checks);
    }

    [Fact]
    public void A_part_that_comes_in_with_a_new_one_counts_and_one_that_was_taken_over_does_not()
    {
        Assert.Equal(["5 mL of dye with the new valve"], Plan("remove coil", "replace box").Fluids[0].Changes);
        Assert.Equal(3, Plan("", "replace box").Fluids[0].Changes.Length);
    }

    [Fact]
    public void Without_a_new_part_the_nameplate_holds()
    {
        var gas = Plan("", "clean box").Fluids[0];

        Assert.Equal((gas.Charge, "0.83 to 0.87 kg"), (gas.FillTo, gas.Band));
        Assert.Empty(gas.Changes);
    }

    [Fact]
    public void A_supply_that_a_new_part_brings_itself_is_said_at_the_part()
    {
        var plan = Plan("release pump_pins  remove pump", "replace pump");

        Assert.Equal(["10 mL of PAG oil less with the new pump."], plan.Step("Fit the new pump").How);
        Assert.Empty(plan.Step("Fit the new pump").Consumes);
        Assert.DoesNotContain(plan.Consumables, line => line.Title == "PAG oil");
    }

    [Fact]
    public void A_charge_without_tolerance_has_no_band()
    {
        var water = PlanOf.Text(Library + """
            procedure drain "Drain the water" on cooler {
              stage "Water" { empty water }
            }
            """).Fluids[0];

        Assert.Equal(("4 L", "", ""), (water.FillTo, water.Band, water.LeastRecovered));
    }

    private static Plan Plan(string steps, string work) => PlanOf.Text(Library + $$"""
        procedure job "Job" on cooler {
          stage "Box" {
            empty gas
            disconnect box_unions
            release box_pins
            remove box
            release coil_pins
            {{steps}}
          }
          work { {{work}} }
        }
        """);
}
