using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Needs;

/// <summary>
/// What a hand finds before it touches anything. At a joint, whatever that is made of and whichever way the hand turns: what hides the joint is
/// away, its covers are off, its energy is isolated and proved to be off, and its fluid is out.
/// </summary>
public sealed class HandTests
{
    private static readonly MachineFacts Facts = new(Checked.Stage(
        """
        energy mains "mains" { isolate "Pull the plug."  verify "It stays still." at tap  restore "Plug it in." }
        fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
        control lever "lever" { low, high }
        energy grid "grid" { isolate "Switch off."  verify "Dark."  restore "Switch on." }
        fluid water "water" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
        part tap "tap" { behind hood }
        part hood "hood" { held by 2 pin as hood_pins }
        part pump "pump" {
          behind hood
          held by 2 bolt as bolts { on mains  carries oil  covered by 2 cap as bolts_cap }
          held by 2 pin as pins { on mains  carries oil  covered by 2 cap as pins_cap }
          held by 2 glue as seam { on mains  carries oil  covered by 2 cap as seam_cap }
          wired by 2 plug_2 as plugs { on mains  carries oil  covered by 2 cap as plugs_cap }
          piped by 2 hose as hoses { on mains  carries oil  covered by 2 cap as hoses_cap }
        }
        part door "door" {
          behind hood
          way needs lever at high
          held by 2 pin as door_pins
          aside "Swing it up." needs door_pins
        }
        """,
        "release hood_pins").Only.Procedure.Machine);

    [Theory]
    [InlineData(NeedsPhase.Strip, Verb.Undo, "bolts", "JointAttached")]
    [InlineData(NeedsPhase.Strip, Verb.Loosen, "bolts", "JointAttached")]
    [InlineData(NeedsPhase.Strip, Verb.Release, "pins", "JointAttached")]
    [InlineData(NeedsPhase.Strip, Verb.Unplug, "plugs", "JointAttached")]
    [InlineData(NeedsPhase.Strip, Verb.Disconnect, "hoses", "JointAttached")]
    [InlineData(NeedsPhase.Strip, Verb.Cut, "seam", "JointAttached")]
    [InlineData(NeedsPhase.Refit, Verb.Fasten, "bolts", "JointMissing", "PartInPlace")]
    [InlineData(NeedsPhase.Refit, Verb.Snug, "bolts", "JointMissing", "PartInPlace")]
    [InlineData(NeedsPhase.Refit, Verb.Tighten, "bolts", "JointAttached", "PartInPlace", "JointSlack")]
    [InlineData(NeedsPhase.Refit, Verb.Engage, "pins", "JointMissing", "PartInPlace")]
    [InlineData(NeedsPhase.Refit, Verb.Plug, "plugs", "JointMissing", "PartInPlace")]
    [InlineData(NeedsPhase.Refit, Verb.Connect, "hoses", "JointMissing", "PartInPlace")]
    [InlineData(NeedsPhase.Refit, Verb.Renew, "seam", "JointMissing", "PartInPlace")]
    public void A_hand_at_a_joint_finds_it_bare_dead_and_drained(NeedsPhase phase, Verb verb, string joint, params string[] itsOwn) => Assert.Superset(
        new HashSet<string>([.. itsOwn, "PartOutOfTheWay hood", $"CoverOff {joint}_cap", "EnergyIsolated mains", "EnergyProvedDead mains", "FluidEmpty oil"]),
        Needs(phase, verb, joint));

    [Theory]
    [InlineData(NeedsPhase.Refit, Verb.Fasten, 2, "JointMissing bolts 2")]
    [InlineData(NeedsPhase.Refit, Verb.Fasten, 0, "JointMissing bolts 1")]
    [InlineData(NeedsPhase.Strip, Verb.Undo, 2, "JointAttached bolts 2")]
    [InlineData(NeedsPhase.Strip, Verb.Undo, 0, "JointAttached bolts 1")]
    public void As_many_pieces_are_there_as_the_hand_takes_and_one_at_least(NeedsPhase phase, Verb verb, int pieces, string need) =>
        Assert.Contains(need, Collected(phase, verb, "bolts", pieces).Select(found => found switch
        {
            JointMissing missing => $"JointMissing {missing.Joint.Name} {missing.Least}",
            JointAttached attached => $"JointAttached {attached.Joint.Name} {attached.Least}",
            _ => "",
        }));

    [Theory]
    [InlineData(Verb.Retorque, "CoverOff bolts_cap", "JointComplete bolts", "JointTight bolts")]
    [InlineData(Verb.Repair)]
    [InlineData(Verb.Clean)]
    [InlineData(Verb.Inspect)]
    [InlineData(Verb.Adjust)]
    public void Work_at_a_joint_finds_it_within_reach_dead_and_drained(Verb verb, params string[] itsOwn) => Assert.Superset(
        new HashSet<string>([.. itsOwn, "PartOutOfTheWay hood", "EnergyIsolated mains", "EnergyProvedDead mains", "FluidEmpty oil"]),
        Needs(NeedsPhase.Refit, verb, "bolts"));

    [Theory]
    [InlineData(NeedsPhase.Strip, Verb.Aside, "PartFitted door", "JointOff door_pins")]
    [InlineData(NeedsPhase.Strip, Verb.Remove, "PartInPlace door", "JointOff door_pins")]
    [InlineData(NeedsPhase.Refit, Verb.Return, "PartAside door", "JointOff door_pins")]
    [InlineData(NeedsPhase.Refit, Verb.Fit, "PartOut door")]
    public void A_part_moves_where_nothing_hides_it_or_is_on_its_way_or_ties_it(NeedsPhase phase, Verb verb, params string[] itsOwn) =>
        Assert.Superset(new HashSet<string>([.. itsOwn, "PartOutOfTheWay hood", "ControlAt lever"]), Needs(phase, verb, "door"));

    [Fact]
    public void Who_proves_an_energy_off_gets_at_the_place_of_that() =>
        Assert.Superset(new HashSet<string>(["PartOutOfTheWay hood", "EnergyIsolated mains"]), Needs(NeedsPhase.Strip, Verb.Verify, "mains"));

    [Theory]
    [InlineData("", "PRC3013")]
    [InlineData("{ needs mains live, oil full }", "")]
    // That another is live, or this one isolated, takes nothing away.
    [InlineData("{ needs grid live, oil full }", "PRC3013")]
    [InlineData("{ needs mains live, water full }", "PRC3013")]
    public void Only_a_step_that_asks_for_it_live_and_full_works_on_a_joint_that_is(string needs, string code) => Assert.Equal(
        code,
        string.Join(" ", Checked.Stage(
            """
            energy mains "mains" { isolate "Pull the plug."  verify "It stays still."  restore "Plug it in." }
            energy grid "grid" { isolate "Switch off."  verify "Dark."  restore "Switch on." }
            fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
            fluid water "water" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
            part pump "pump" { wired by 1 plug_2 as pump_plug { on mains  carries oil } }
            """,
            $"inspect pump_plug {needs}").Codes.Where(found => found == "PRC3013")));

    /// <summary>Each need by its sort, and by its sort and its item.</summary>
    private static HashSet<string> Needs(NeedsPhase phase, Verb verb, string name) =>
        [.. Collected(phase, verb, name, 2).SelectMany(need => new[] { need.GetType().Name, NeedsOf.Named(need) })];

    private static List<Need> Collected(NeedsPhase phase, Verb verb, string name, int pieces) =>
        NeedsOf.Action(Facts, MachineState.Whole(Facts.Layout), phase, verb, name, Facts.Machine.Items[name] is Joint ? pieces : 0);
}
