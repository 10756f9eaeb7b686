using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>A replacement reads as one thing, wherever its steps stand.</summary>
public class RenewalTests
{
    private static readonly Plan Plan = PlanOf.Text("""
        supply ring "O-ring" { single use }
        supply paste "heat-conducting paste"
        fastener bolt "bolt" { }
        fastener nut "lock nut" { single use }
        line union "union" { seals 2 ring }
        machine rig "Rig" {
          part module "module" { held by 4 bolt as module_bolts  held by 2 nut as module_nuts  piped by 1 union as module_union carries none }
          part strut "strut" { held by 3 bolt as strut_bolts }
        }
        procedure p "P" on rig {
          goal replace module
          stage "S" { disconnect module_union  undo module_bolts  undo module_nuts  remove module  undo 2 of strut_bolts }
          work { replace module { uses 2 g of paste  how "A thin, even coat." }  replace 1 of strut_bolts }
        }
        """);

    [Theory]
    [InlineData("Remove the module", "Fit the new module", 1)]
    [InlineData("Undo 2 × lock nut", "Fasten 2 × lock nut", 2)]
    [InlineData("Disconnect 1 × union", "Connect 1 × union", 2)]
    [InlineData("Undo 2 × bolt", "Fasten 2 × bolt: 1 old, 1 new", 1)]
    public void The_step_that_scraps_and_the_step_that_fits_name_each_other(string scraps, string fits, int count)
    {
        var (old, fresh) = (Plan.Step(scraps), Plan.Step(fits));

        Assert.NotEqual("", old.Scrap);
        Assert.Equal([fresh.Number], old.NewAt);
        Assert.Equal(count, old.NewCount);
        var part = Assert.Single(fresh.NewParts);
        Assert.Equal((count, old.Number), (part.Count, part.Replaces));
    }

    [Fact]
    public void The_work_names_both()
    {
        var replace = Plan.Step("Replace the module");

        Assert.Equal([Plan.Step("Remove the module").Number], replace.OldOffAt);
        Assert.Equal([Plan.Step("Fit the new module").Number], replace.NewAt);
    }

    [Fact]
    public void What_goes_back_names_nothing_new()
    {
        var step = Plan.Step("Undo 4 × bolt");

        Assert.Empty(step.NewAt);
        Assert.Equal("", step.Scrap);
        Assert.Empty(Plan.Step("Fasten 4 × bolt").NewParts);
    }

    [Fact]
    public void The_order_list_has_each_once_with_its_count() => Assert.Equal(
        [("O-ring", 2), ("bolt", 1), ("lock nut", 2), ("module", 1)],
        Plan.Orders.Select(line => (line.Title, line.Count)).Order());

    [Fact]
    public void What_a_replace_uses_stands_where_the_new_one_goes_in()
    {
        var (replace, fit) = (Plan.Step("Replace the module"), Plan.Step("Fit the new module"));

        Assert.Empty(replace.Consumes);
        Assert.Empty(replace.How);
        Assert.Equal(["2 g of heat-conducting paste"], fit.Consumes);
        Assert.Equal(["A thin, even coat."], fit.How);
        Assert.Equal([fit.Number], Assert.Single(Plan.Consumables).Steps);
    }

    [Fact]
    public void What_is_discarded_has_no_new_one()
    {
        var plan = PlanOf.Text("""
            fastener bolt "bolt" { }
            machine rig "Rig" { part crate "crate" { held by 4 bolt as crate_bolts } }
            procedure p "P" on rig { stage "S" { undo crate_bolts  remove crate  discard crate because "It is packing." } }
            """);

        Assert.NotEqual("", plan.Step("Remove the crate").Scrap);
        Assert.Empty(plan.Step("Remove the crate").NewAt);
    }
}
