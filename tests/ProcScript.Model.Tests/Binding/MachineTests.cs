using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Tests.Binding;

/// <summary>From the text of a machine to its items.</summary>
public sealed class MachineTests
{
    [Fact]
    public void Every_property_of_the_catalog_arrives()
    {
        var library = Samples.Bind("""
            tool driver "driver" { size 1/2 in }
            tool bar "bar"
            supply paste "paste"
            supply ring "O-ring" { single use }
            fastener bolt "M8 bolt" {
              thread M8x1.25  length 25 mm  grade 8.8  drive driver  tool bar  torque 22 N.m  spare 5 %  time 9 s
              seals 2 ring  uses 3 g of paste  single use  captive  release "Out."  engage "In."  ppe "goggles"
            }
            bond tape "tape"
            machine m "m" { part p "p" { held by 2 bolt as b  held by 1 tape as t } }
            """);
        Assert.Empty(library.Words());
        var kind = ((Joint)library.Machines[0].Items["b"]).Kind;
        Assert.Equal(("M8x1.25", "25 mm", "8.8"), (kind.Thread, kind.Length!.Print(), kind.Grade));
        Assert.Equal(("driver", "1/2 in"), (kind.Drive!.Name, kind.Drive.Size!.Print()));
        Assert.Equal(["bar"], kind.Tools.Select(tool => tool.Name));
        Assert.Equal(("22 N·m", "5 %", "9 s"), (kind.Torque!.Print(), kind.Spare!.Print(), kind.Time!.Print()));
        Assert.Equal(
            [("ring", "2", true), ("paste", "3 g", false)],
            kind.Uses.Select(use => (use.Supply.Name, use.Amount.Print(), use.IsSeal)));
        Assert.True(kind.SingleUse && kind.Captive && kind.Uses[0].Supply.SingleUse);
        Assert.Equal(("Out.", "In."), (kind.Release, kind.Engage));
        Assert.Equal(["goggles"], kind.Ppe);
        Assert.True(((Joint)library.Machines[0].Items["t"]).Kind is { SingleUse: true, Category: KindCategory.Bond });
    }

    [Fact]
    public void A_joint_has_its_kinds_words_and_torque_until_it_has_its_own()
    {
        var items = Samples.Bind("""
            fastener bolt "bolt" { torque 22 N.m  release "Kind out."  engage "Kind in." }
            machine m "m" { part p "p" {
              held by 2 bolt as plain
              held by 2 bolt as own { torque 8 N.m  release "Own out." }
            } }
            """).Machines[0].Items;
        var (plain, own) = ((Joint)items["plain"], (Joint)items["own"]);
        Assert.Equal(("22 N·m", "Kind out.", "Kind in."), (plain.Torque!.Print(), plain.Release, plain.Engage));
        Assert.Equal(("8 N·m", "Own out.", "Kind in."), (own.Torque!.Print(), own.Release, own.Engage));
    }

    [Fact]
    public void A_joint_ties_to_the_part_named_else_to_the_part_around_it_else_to_the_frame()
    {
        var items = Samples.Bind("""
            clip pin "pin"
            machine m "m" {
              part other "other"
              part outer "outer" {
                held by 1 pin as to_frame
                part inner "inner" {
                  held by 1 pin as to_parent covered by 1 pin as cap
                  held by 1 pin as to_other to other
                }
              }
            }
            """).Machines[0].Items;
        Assert.Null(((Joint)items["to_frame"]).Other);
        Assert.Same(items["outer"], ((Joint)items["to_parent"]).Other);
        Assert.Same(items["other"], ((Joint)items["to_other"]).Other);
        Assert.Null(((Joint)items["cap"]).Other);
        Assert.Same(items["inner"], ((Joint)items["cap"]).Owner);
        Assert.Same(items["to_parent"], ((Joint)items["cap"]).Over);
        Assert.Equal([items["inner"]], ((Part)items["outer"]).Children);
        Assert.Equal(["to_parent", "cap", "to_other"], ((Part)items["inner"]).Joints.Select(joint => joint.Name));
    }

    [Fact]
    public void Conditions_have_their_state_phase_and_place()
    {
        const string Text = """
            clip pin "pin"
            machine m "m" {
              energy e "e" { isolate "i"  restore "r" }
              control c "c" { up, down }
              part q "q" { held by 1 pin as j }
              part p "p" { behind q  needs e isolated, c at down  strip needs j slack  refit needs q fitted }
            }
            """;
        var library = Samples.Bind(Text);
        Assert.Empty(library.Words());
        var conditions = library.Machines[0].Items["p"].Conditions;
        Assert.Equal(
            [
                ("q", NeededState.OutOfTheWay, -1, NeedsPhase.Both),
                ("e", NeededState.Isolated, -1, NeedsPhase.Both),
                ("c", NeededState.Position, 1, NeedsPhase.Both),
                ("j", NeededState.Slack, -1, NeedsPhase.Strip),
                ("q", NeededState.Fitted, -1, NeedsPhase.Refit),
            ],
            conditions.Select(one => (one.Item.Name, one.State, one.Position, one.Phase)));
        Assert.Equal(
            ["q", "e isolated", "c at down", "j slack", "q fitted"],
            conditions.Select(one => Text.Substring(one.Declared.Span.Start, one.Declared.Span.Length)));
    }

    [Fact]
    public void Items_without_a_title_are_called_by_their_name()
    {
        var machine = Samples.Bind("""
            clip pin
            machine big_cab { each side in far_left, right { part door_trim[side] { held by 2 pin as trim_pins[side] } } }
            """).Machines[0];
        Assert.Equal("big cab", machine.Title);
        Assert.Equal(["door trim far left", "door trim right"], machine.Parts.Select(part => part.Title));
        Assert.Equal("trim pins right", machine.Joints[1].Title);
        Assert.Equal("pin", machine.Joints[0].Kind.Title);
    }

    [Fact]
    public void Placeholders_take_values_as_words_and_braces_stay()
    {
        var machine = Samples.Bind("""
            clip pin "pin"
            machine m "m" { each side in far_left, right { part p[side] "{side} {{trim} of the {side} door" {
              held by 2 pin as j[side] at "edge {side}"
              warning "The {side} edge is sharp."
              ppe "{side} glove"
            } } }
            """).Machines[0];
        Assert.Equal("far left {trim} of the far left door", machine.Parts[0].Title);
        Assert.Equal("edge right", machine.Joints[1].At);
        Assert.Equal("The right edge is sharp.", machine.Parts[1].Alerts[0].Text);
        Assert.Equal(["far left glove"], machine.Parts[0].Ppe);
    }

    [Fact]
    public void Each_and_when_nest_and_ranges_count()
    {
        var machine = Samples.Bind("""
            clip pin "pin"
            machine m "m" {
              each row in 1..2 { each side in left, right {
                part p[row, side] "p" { when side is left { when row is not 1 { held by 1 pin as j[row, side] } } }
              } }
            }
            """).Machines[0];
        Assert.Equal(["p[1,left]", "p[1,right]", "p[2,left]", "p[2,right]"], machine.Parts.Select(part => part.Name));
        Assert.Equal(["j[2,left]"], machine.Joints.Select(joint => joint.Name));
    }

    [Fact]
    public void Indices_count_within_each_sort()
    {
        var machine = LibraryBinder.Bind(WorkedExample.Store, TestContext.Current.CancellationToken).Machines[0];
        Assert.Equal(Enumerable.Range(0, machine.Parts.Length), machine.Parts.Select(part => part.Index));
        Assert.Equal(Enumerable.Range(0, machine.Joints.Length), machine.Joints.Select(joint => joint.Index));
        Assert.All(machine.Parts.Where(part => part.Parent is not null), part => Assert.True(part.Parent!.Index < part.Index));
        var states = machine.Energies.Length + machine.Fluids.Length + machine.Controls.Length;
        Assert.Equal(machine.Items.Count, machine.Parts.Length + machine.Joints.Length + states);
    }

    [Fact]
    public void An_energy_and_a_fluid_have_all_that_is_said_of_them()
    {
        var machine = Samples.Bind("""
            tool meter "meter"
            supply coolant_mix "coolant mix"
            machine m "m" {
              energy e "e" { isolate "i"  wait 60 s  verify "v" expect <= 0.5 V  restore "r"  tool meter  time 40 s  danger "d" }
              fluid f "f" { charge 8 L  empty "out"  fill "in"  takes 18 min  attended 3 min  uses 8 L of coolant_mix }
            }
            """).Machines[0];
        var energy = machine.Energies[0];
        Assert.Equal(
            ("i", "60 s", "v", "≤ 0.5 V", "r"),
            (energy.Isolate, energy.Wait!.Print(), energy.Verify, energy.VerifyExpect!.Print(), energy.Restore));
        Assert.Equal(("meter", "40 s", SignalWord.Danger), (energy.Tools[0].Name, energy.Time!.Print(), energy.Alerts[0].Word));
        var fluid = machine.Fluids[0];
        Assert.Equal(
            ("8 L", "out", "in", "18 min", "3 min"),
            (fluid.Charge!.Print(), fluid.Empty, fluid.Fill, fluid.Takes!.Print(), fluid.Attended!.Print()));
        Assert.Equal("8 L", fluid.Uses[0].Amount.Print());
    }
}
