using ProcScript.Analysis.Machines;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Needs;

/// <summary>
/// What a hand needs that works on the bench, inside a part that is off: what stayed in the machine neither hides nor holds anything there, as long as
/// the part stays on the bench; what lies on the same bench does.
/// </summary>
public sealed class BenchNeedTests
{
    private static readonly MachineFacts Facts = new(Checked.Unasked(
        """
        tool key "key"
        fastener bolt "bolt" { drive key }
        clip pin "pin"
        connector plug_2 "plug"
        machine m "M" {
          fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
          control lever "lever" { low, high }
          part cabin "cabin" { part hood "hood" { held by 2 pin as hood_pins } }
          part box "box" {
            held by 2 pin as box_pins
            part drawer "drawer" { part flap "flap" }
            part tray "tray" { behind hood  held by 1 bolt as tray_bolt }
            part rail "rail" { behind flap  held by 1 bolt as rail_bolt }
            part dial "dial" { needs lever at low  held by 1 bolt as dial_bolt }
            part grip "grip" { behind hood or flap  held by 1 bolt as grip_bolt }
          }
          part frame "frame" {
            behind hood
            needs sling fitted
            part sling "sling" { temporary  held by 2 pin as sling_pins }
          }
          energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
          part lamp "lamp" { wired by 1 plug_2 as lamp_plug { to box  on mains } }
          part stand "stand" {
            needs strut fitted or hood out
            part strut "strut" { temporary }
          }
        }
        procedure p "P" on m { stage "S" { release hood_pins } }
        """).Only.Procedure.Machine);

    [Theory]
    [InlineData("tray_bolt", "", "PartOutOfTheWay hood", "PartOnBench box")]
    [InlineData("tray_bolt", "box", "PartOnBench box", "PartOutOfTheWay hood")]
    // The hood went off with the cabin, to another bench, which may come back at any time.
    [InlineData("tray_bolt", "box cabin", "PartOnBench box", "PartOnBench cabin")]
    [InlineData("rail_bolt", "box", "PartOutOfTheWay flap", "PartOnBench box")]
    // The flap went off with the drawer, and would be in the way again with it.
    [InlineData("rail_bolt", "box drawer", "PartOnBench drawer", "PartOutOfTheWay flap")]
    [InlineData("dial_bolt", "", "ControlAt lever", "PartOnBench box")]
    // The lever is where it should be, and may be moved all the same.
    [InlineData("dial_bolt", "box", "PartOnBench box", "ControlAt lever")]
    // One way stayed in the machine: none is asked for, as long as the box stays here.
    [InlineData("grip_bolt", "box", "PartOnBench box", "PartOutOfTheWay flap")]
    // Both ways are elsewhere, and one of them elsewhere on this bench: the first will do.
    [InlineData("grip_bolt", "box drawer", "PartOnBench box", "PartOnBench drawer")]
    // While an end of it is in the machine it is live there.
    [InlineData("lamp_plug", "", "EnergyIsolated mains", "PartOnBench lamp")]
    [InlineData("lamp_plug", "lamp", "EnergyIsolated mains", "PartOnBench lamp")]
    [InlineData("lamp_plug", "box", "EnergyIsolated mains", "PartOnBench box")]
    [InlineData("lamp_plug", "lamp box", "PartOnBench lamp", "EnergyIsolated mains")]
    public void It_needs(string joint, string off, string need, string noNeed)
    {
        var needs = Needs(joint == "lamp_plug" ? Verb.Unplug : Verb.Undo, joint, off);

        Assert.Contains(need, needs);
        Assert.DoesNotContain(noNeed, needs);
    }

    [Fact]
    public void What_asks_for_a_temporary_part_does_not_bind_who_puts_that_on_and_all_else_does()
    {
        var needs = Needs(Verb.Fit, "sling", "");

        Assert.Contains("PartOutOfTheWay hood", needs);
        Assert.DoesNotContain("PartFitted sling", needs);
        Assert.Contains("PartFitted sling", Needs(Verb.Aside, "frame", ""));
        Assert.Contains("AnyOf strut", Needs(Verb.Aside, "stand", ""));
        Assert.DoesNotContain("AnyOf strut", Needs(Verb.Fit, "strut", ""));
    }

    [Theory]
    [InlineData(Verb.Replace)]
    [InlineData(Verb.Discard)]
    public void What_goes_away_leaves_nothing_behind_that_is_there_for_the_job_alone(Verb verb)
    {
        Assert.Contains("TemporaryOff sling", Needs(verb, "frame", "frame"));
        Assert.DoesNotContain("TemporaryOff sling", Needs(verb, "sling", ""));
        Assert.DoesNotContain("TemporaryOff sling", Needs(verb, "box", "box"));
    }

    [Fact]
    public void Work_on_a_part_that_is_off_needs_it_to_stay_off_and_nothing_else()
    {
        Assert.Equal(["PartOut frame"], Needs(Verb.Clean, "frame", "frame"));
        Assert.Equal(["PartOutOfTheWay hood", "PartFitted sling", "JointComplete sling_pins", "JointTight sling_pins"], Needs(Verb.Clean, "frame", ""));
    }

    private static List<string> Needs(Verb verb, string name, string off)
    {
        var state = MachineState.Whole(Facts.Layout);
        foreach (var part in off.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            state[new StateVariable(StateKind.Place, ((Part)Facts.Machine.Items[part]).Index)] = (int)PartPlace.Out;
        }

        return [.. NeedsOf.Action(Facts, state, NeedsPhase.Strip, verb, name, 1).Select(NeedsOf.Named)];
    }
}
