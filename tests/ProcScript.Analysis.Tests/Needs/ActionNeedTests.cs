using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Needs;

/// <summary>What single actions need in single states, each need by its sort and its item.</summary>
public sealed class ActionNeedTests
{
    private static readonly Machine Machine = Checked.Unasked(
        """
        tool key "key"
        fastener bolt "bolt" { drive key }
        clip pin "pin"
        connector plug_2 "plug"
        tool closing_cap "closing cap"
        line hose "hose" { tool key  cap 1 closing_cap }
        machine m "M" {
          energy mains "mains" { isolate "Pull the plug." verify "It stays still." restore "Plug it in." }
          fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
          control table "table" { low, high }
          part hood "hood" { aside "Swing it up."  held by 2 pin as hood_pins }
          part pump "pump" {
            behind hood
            held by 3 bolt as pump_bolts { needs strap fitted }
            wired by 1 plug_2 as pump_plug { on mains }
            piped by 3 hose as pump_hoses { carries oil }
            part fan "fan" { way needs table at high  held by 1 bolt as fan_bolt }
          }
          part box "box" {
            part lid "lid" { held by 1 bolt as lid_bolt }
            part filter "filter" { way behind lid  held by 1 bolt as filter_bolt }
          }
          part strap "strap" { temporary  held by 2 pin as strap_pins }
        }
        procedure p "P" on m { stage "S" { release hood_pins } }
        """).Only.Procedure.Machine;

    private static readonly MachineFacts Facts = new(Machine);

    [Theory]
    // A line of three comes back one by one while caps are on the others: of three openings, those two may be capped still.
    [InlineData(NeedsPhase.Refit, Verb.Connect, "pump_hoses", 1, "pump_hoses off, pump_hoses capped 2", "JointUncapped 2")]
    [InlineData(NeedsPhase.Refit, Verb.Connect, "pump_hoses", 3, "pump_hoses off", "JointUncapped 0, JointMissing pump_hoses, PartInPlace pump, FluidEmpty oil")]
    // Who takes the prop away has all that holds the part complete and tight.
    [InlineData(NeedsPhase.Refit, Verb.Unsupport, "pump", 0, "pump propped", "JointComplete pump_bolts, JointTight pump_bolts")]
    // A fluid goes in where it is out, and every line on it is complete and tight.
    [InlineData(NeedsPhase.Refit, Verb.Fill, "oil", 0, "oil out", "FluidEmpty oil, JointComplete pump_hoses, JointTight pump_hoses")]
    [InlineData(NeedsPhase.Strip, Verb.Loosen, "lid_bolt", 1, "", "JointTight lid_bolt")]
    [InlineData(NeedsPhase.Refit, Verb.Return, "hood", 0, "hood aside", "PartAside hood")]
    // On the bench a condition on what stayed in the machine says nothing, so the part has to stay there; one within the assembly holds as ever.
    [InlineData(NeedsPhase.Strip, Verb.Remove, "fan", 0, "pump out", "PartOnBench pump")]
    [InlineData(NeedsPhase.Strip, Verb.Remove, "fan", 0, "", "ControlAt table")]
    [InlineData(NeedsPhase.Strip, Verb.Remove, "filter", 0, "box out", "PartOutOfTheWay lid")]
    [InlineData(NeedsPhase.Strip, Verb.Verify, "mains", 0, "", "EnergyIsolated mains")]
    [InlineData(NeedsPhase.Strip, Verb.Aside, "fan", 0, "", "ControlAt table")]
    [InlineData(NeedsPhase.Strip, Verb.Remove, "strap", 0, "strap fitted, strap propped", "PartPropped strap")]
    [InlineData(NeedsPhase.Strip, Verb.Undo, "pump_bolts", 3, "", "PartFitted strap")]
    // There is something to do: a cap is on, the prop stands, the control is elsewhere, the fluid is in.
    [InlineData(NeedsPhase.Refit, Verb.Uncap, "pump_hoses", 3, "pump_hoses off", "JointCapped pump_hoses")]
    [InlineData(NeedsPhase.Refit, Verb.Unsupport, "pump", 0, "pump propped", "PartPropped pump")]
    [InlineData(NeedsPhase.Strip, Verb.Set, "table", 1, "", "ControlElsewhere table")]
    [InlineData(NeedsPhase.Strip, Verb.Empty, "oil", 0, "", "FluidFull oil")]
    public void It_needs(NeedsPhase phase, Verb verb, string item, int value, string state, string needs) =>
        Assert.Superset(needs.Split(", ").ToHashSet(), Needs(phase, verb, item, value, state).ToHashSet());

    [Theory]
    [InlineData(NeedsPhase.Strip, Verb.Remove, "filter", 0, "box out", "PartOnBench box")]
    [InlineData(NeedsPhase.Strip, Verb.Remove, "fan", 0, "", "PartOnBench pump")]
    // The temporary part asks for nothing while it comes itself.
    [InlineData(NeedsPhase.Strip, Verb.Engage, "strap_pins", 2, "strap fitted", "PartFitted strap")]
    [InlineData(NeedsPhase.Refit, Verb.Unsupport, "hood", 0, "hood propped", "JointComplete pump_bolts")]
    public void It_does_not_need(NeedsPhase phase, Verb verb, string item, int value, string state, string need) =>
        Assert.DoesNotContain(need, Needs(phase, verb, item, value, state));

    /// <summary>Joints, parts, energies, fluids, controls: what a need lets pass, and what it does not.</summary>
    [Fact]
    public void It_is_met_by_what_it_says_and_by_nothing_else()
    {
        var (mains, oil, table, pump, hoses) = (Machine.Energies[0], Machine.Fluids[0], Machine.Controls[0], (Part)Item("pump"), (Joint)Item("pump_hoses"));
        (Need Need, int[] Met, int[] Unmet)[] all =
        [
            (new EnergyLive(mains), [(int)EnergyState.Live], [(int)EnergyState.Dead, (int)EnergyState.Unproved]),
            (new EnergyIsolated(mains), [(int)EnergyState.Dead, (int)EnergyState.Unproved], [(int)EnergyState.Live]),
            (new EnergyProvedDead(mains), [(int)EnergyState.Dead], [(int)EnergyState.Live, (int)EnergyState.Unproved]),
            (new FluidFull(oil), [1], [0]),
            (new FluidEmpty(oil), [0], [1]),
            (new PartPropped(pump, true), [1], [0]),
            (new PartPropped(pump, false), [0], [1]),
            (new PartOut(pump), [(int)PartPlace.Out], [(int)PartPlace.Fitted, (int)PartPlace.Aside]),
            (new PartAside(pump), [(int)PartPlace.Aside], [(int)PartPlace.Fitted, (int)PartPlace.Out]),
            (new PartInPlace(pump), [(int)PartPlace.Fitted, (int)PartPlace.Aside], [(int)PartPlace.Out]),
            (new PartOutOfTheWay(pump), [(int)PartPlace.Aside, (int)PartPlace.Out], [(int)PartPlace.Fitted]),
            (new PartFitted(pump), [(int)PartPlace.Fitted], [(int)PartPlace.Aside, (int)PartPlace.Out]),
            (new PartOnBench(pump), [(int)PartPlace.Out], [(int)PartPlace.Fitted, (int)PartPlace.Aside]),
            (new TemporaryOff(pump), [(int)PartPlace.Out], [(int)PartPlace.Fitted, (int)PartPlace.Aside]),
            (new HolePlugged(pump, true), [1], [0]),
            (new HolePlugged(pump, false), [0], [1]),
            (new ControlAt(table, 1), [1], [0]),
            (new ControlElsewhere(table, 1), [0], [1]),
            (new ControlElsewhere(table, 0), [1], [0]),
            (new JointOff(hoses), [0], [1, 3]),
            (new CoverOff(hoses), [0], [1, 3]),
            (new JointComplete(hoses), [3], [0, 2]),
            (new JointAttached(hoses, 2), [2, 3], [0, 1]),
            (new JointMissing(hoses, 2), [0, 1], [2, 3]),
            (new JointTight(hoses), [0], [1]),
            (new JointSlack(hoses), [1], [0]),
            (new JointCapped(hoses, 2), [2, 3], [0, 1]),
            (new JointUncapped(hoses, 1), [0, 1], [2, 3]),
        ];
        Assert.All(all, one =>
        {
            Assert.All(one.Met, value => Assert.True(one.Need.IsMetBy(value)));
            Assert.All(one.Unmet, value => Assert.False(one.Need.IsMetBy(value)));
            // A run that goes on after it was not met goes on as if it had been.
            Assert.Contains(one.Need.Met, one.Met);
        });
    }

    private static IEnumerable<string> Needs(NeedsPhase phase, Verb verb, string item, int value, string state)
    {
        var at = MachineState.Whole(Facts.Layout);
        foreach (var change in state.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(change => change.Split(' ')))
        {
            var (changed, index) = (Item(change[0]), IndexOf(Item(change[0])));
            var (kind, to) = (change[1], changed) switch
            {
                ("off", _) => (StateKind.Attached, 0),
                ("capped", _) => (StateKind.Capped, int.Parse(change[2], System.Globalization.CultureInfo.InvariantCulture)),
                ("propped", _) => (StateKind.Propped, 1),
                ("aside", _) => (StateKind.Place, (int)PartPlace.Aside),
                ("fitted", _) => (StateKind.Place, (int)PartPlace.Fitted),
                ("out", Fluid) => (StateKind.Full, 0),
                _ => (StateKind.Place, (int)PartPlace.Out),
            };
            at[new StateVariable(kind, index)] = to;
        }

        return NeedsOf.Action(Facts, at, phase, verb, item, value).Select(Told);
    }

    private static string Told(Need need) => need is JointUncapped capped ? $"JointUncapped {capped.Most}" : NeedsOf.Named(need);

    private static MachineItem Item(string name) => Machine.Items[name];

    private static int IndexOf(MachineItem item) => item switch
    {
        Joint joint => joint.Index,
        Part part => part.Index,
        Fluid fluid => fluid.Index,
        _ => throw new ArgumentOutOfRangeException(nameof(item)),
    };
}
