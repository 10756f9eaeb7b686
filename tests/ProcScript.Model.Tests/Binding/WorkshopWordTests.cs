using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Tests.Binding;

/// <summary>The words of the workshop: tightening, hazards, energies in order, renewal, lifting.</summary>
public sealed class WorkshopWordTests
{
    [Fact]
    public void A_torque_keeps_its_stages_and_angles_and_one_unit_serves_all_stages()
    {
        var library = Samples.Bind("""
            fastener bolt "bolt" { torque 20, 40 ± 3 N.m + 90° + 45°  pattern inside out  thread locker  oiled  coating "zinc"  cure 30 min }
            fastener nut "nut" { torque 10 lbf.ft, 20 N.m }
            """);
        Assert.Empty(library.Words());
        var (bolt, nut) = (library.Kinds[0], library.Kinds[1]);
        Assert.Equal("20 N·m, 40 ± 3 N·m + 90° + 45°", bolt.Torque!.Print());
        Assert.True(bolt.Torque!.IsToAngle);
        Assert.Equal("10 lbf·ft, 20 N·m", nut.Torque!.Print());
        Assert.False(nut.Torque!.IsToAngle);
        Assert.Equal((TighteningPattern.InsideOut, true, true, "zinc"), (bolt.Pattern, bolt.ThreadLocker, bolt.Oiled, bolt.Coating));
        Assert.Equal("30 min", bolt.Cure!.Print());
    }

    [Theory]
    [InlineData("torque 20, 40 bar", "PRC1202", 2)]
    [InlineData("torque 20 N.m + 4 N.m", "PRC1202", 1)]
    [InlineData("torque 20, 40", "PRC1203", 2)]
    [InlineData("torque 20 N.m + 90", "PRC1203", 1)]
    public void A_stage_or_an_angle_in_a_wrong_unit_is_a_finding(string torque, string code, int count)
    {
        var codes = Samples.Bind($"fastener bolt \"bolt\" {{ {torque} }}").Findings.Select(finding => finding.Rule.Code);
        Assert.Equal(Enumerable.Repeat(code, count), codes);
    }

    [Fact]
    public void A_joint_has_the_tightening_and_the_hazards_of_its_kind_and_its_own_beside_them()
    {
        var items = Samples.Bind("""
            fastener bolt "bolt" { pattern star  oiled  hazard spring }
            machine m "m" { part p "p" {
              held by 4 bolt as plain
              held by 4 bolt as own { pattern listed  thread locker  hazard hot_surface, spring }
            } }
            """).Machines[0].Items;
        var (plain, own) = ((Joint)items["plain"], (Joint)items["own"]);
        Assert.Equal((TighteningPattern.Star, true, false), (plain.Pattern, plain.Oiled, plain.ThreadLocker));
        Assert.Equal((TighteningPattern.Listed, true, true), (own.Pattern, own.Oiled, own.ThreadLocker));
        Assert.Equal([Hazard.Spring], plain.Hazards);
        Assert.Equal([Hazard.Spring, Hazard.HotSurface], own.Hazards);
    }

    [Fact]
    public void Every_hazard_has_a_word()
    {
        Assert.Equal(Enum.GetValues<Hazard>(), HazardWords.All.Select(word => HazardWords.Find(word)!.Value));
    }

    [Fact]
    public void An_energy_after_another_needs_it_isolated_both_ways()
    {
        var energy = Samples.Bind("""
            machine m "m" {
              energy hv "hv" { after lv  prepare "P."  shutdown "S."  isolate "I."  lock "L."  bleed "B."  restore "R." }
              energy lv "lv" { isolate "I."  restore "R." }
            }
            """).Machines[0].Energies[0];
        Assert.Equal(["lv"], energy.After.Select(before => before.Name));
        Assert.Equal(
            [("lv", NeededState.Isolated, Syntax.Nodes.NeedsPhase.Both)],
            energy.Conditions.Select(condition => (condition.Item.Name, condition.State, condition.Phase)));
        Assert.Equal(
            ("P.", "S.", "I.", "L.", "B.", "R."),
            (energy.Prepare, energy.Shutdown, energy.Isolate, energy.Lock, energy.Bleed, energy.Restore));
    }

    [Theory]
    [InlineData("a: a", 1)]
    [InlineData("a: b; b: a", 1)]
    [InlineData("a: b; b: c; c: b", 1)]
    [InlineData("a: b; b: a; c: d; d: c", 2)]
    [InlineData("a: b, c; b: c; c", 0)]
    public void A_circle_of_energies_is_found_once(string waits, int circles)
    {
        var energies = waits.Split("; ").Select(one => one.Split(": ")).Select(one =>
            $$"""energy {{one[0]}} "{{one[0]}}" { {{(one.Length > 1 ? "after " + one[1] : "")}} isolate "I."  restore "R." }""");
        var findings = Samples.Bind($"machine m \"m\" {{ {string.Join('\n', energies)} }}").Findings;
        Assert.Equal(Enumerable.Repeat("PRC2014", circles), findings.Select(finding => finding.Rule.Code));
    }

    [Fact]
    public void A_long_row_of_energies_that_wait_for_each_other_is_no_trouble()
    {
        const int Count = 2_000;
        var energies = Enumerable.Range(0, Count).Select(i =>
            $$"""energy e{{i}} "e{{i}}" { after e{{(i + 1) % Count}}  isolate "I."  restore "R." }""");
        var finding = Assert.Single(Samples.Bind($"machine m \"m\" {{ {string.Join('\n', energies)} }}").Findings);
        Assert.Equal("PRC2014", finding.Rule.Code);
    }

    [Fact]
    public void What_disturbs_a_part_is_a_part_or_a_joint()
    {
        var library = Samples.Bind("""
            clip pin "pin"
            machine m "m" {
              energy e "e" { isolate "I."  restore "R." }
              part lid "lid" { held by 2 pin as pins }
              part gasket "gasket" { renew with lid, pins }
              part seal "seal" { renew with e }
            }
            """);
        Assert.Equal(["PRC1103 `e` is an energy, not a part or a joint"], library.Words());
        Assert.Equal(["lid", "pins"], ((Part)library.Machines[0].Items["gasket"]).RenewWith.Select(item => item.Name));
    }

    [Fact]
    public void A_part_and_an_action_say_how_it_is_lifted()
    {
        var library = Samples.Bind("""
            machine m "m" {
              part p "p" { mass 20 kg  reach 40 cm  height 30 .. 110 cm  twist 45°  frequency 0.5 lifts/min  grip fair  hoist }
            }
            procedure out "Out" on m { stage "S" { remove p { reach 50 cm  bag "A"  refit { grip poor  hoist } } } }
            """);
        Assert.Empty(library.Words());
        var part = (Part)library.Machines[0].Items["p"];
        Assert.Equal(
            ("40 cm", "30 to 110 cm", "45°", "0.5 lifts/min", LiftGrip.Fair, true),
            (part.Lift.Reach!.Print(), part.Lift.Height!.Print(), part.Lift.Twist!.Print(), part.Lift.Frequency!.Print(), part.Lift.Grip, part.Hoist));
        var details = library.Procedures[0].Stages[0].Steps[0].Details;
        Assert.Equal(("50 cm", "A", false), (details.Lift.Reach!.Print(), details.Bag, details.Hoist));
        Assert.Equal((LiftGrip.Poor, true), (details.Refit!.Lift.Grip, details.Refit.Hoist));
    }

    [Fact]
    public void A_new_part_changes_a_charge_or_takes_a_supply()
    {
        var library = Samples.Bind("""
            supply pag "oil"
            machine m "m" {
              fluid gas "gas" { empty "E."  fill "F."  with coil add 40 mL of pag  with drier take 10 g }
              part coil "coil"
              part drier "drier"
            }
            """);
        Assert.Empty(library.Words());
        Assert.Equal(
            [("coil", true, "40 mL", "pag"), ("drier", false, "10 g", null)],
            library.Machines[0].Fluids[0].Changes.Select(change =>
                (change.Part.Name, change.Adds, change.Amount.Print(), change.Supply?.Name)));
    }

    [Fact]
    public void A_torque_wrench_has_a_range_and_a_supply_cures()
    {
        var library = Samples.Bind("""
            tool wrench "torque wrench" { range 5 .. 25 N.m }
            supply glue "glue" { cure 2 h }
            bond glued "glued" { uses 3 mL of glue }
            """);
        Assert.Empty(library.Words());
        Assert.Equal("5 to 25 N·m", library.Tools.Single().Range!.Print());
        Assert.Equal("2 h", library.Kinds.Single().Uses[0].Supply.Cure!.Print());
    }
}
