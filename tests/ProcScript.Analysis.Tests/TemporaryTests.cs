using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Proving;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests;

/// <summary>What is on a machine for the job alone: what the proof says where it would stay on.</summary>
public sealed class TemporaryTests
{
    private const string Text = """
        tool bar "bar"
        tool closing_cap "closing cap"
        tool bore_plug "bore plug"
        fastener bolt "M10 bolt" { tool bar }
        line union "union" { tool bar  cap 2 closing_cap }

        machine m "M" {
          part gear "gear" {
            mass 80 kg  hoist  cap 1 bore_plug
            held by 4 bolt as gear_bolts { needs eye fitted }
            piped by 2 union as lines
            part eye "lifting eye" { temporary  mass 1.5 kg  held by 1 bolt as eye_bolt }
          }
        }

        procedure p "P" on m {
          goal remove gear
          stage "S" { strip gear }
        }
        """;

    private static readonly ProcedureOutcome Outcome = Checked.Text(Text).Only.Outcome;

    [Fact]
    public void Strip_fits_and_fastens_what_its_way_needs_and_caps_what_it_opens() => Assert.Equal(
        [
            (Verb.Fit, "eye"), (Verb.Fasten, "eye_bolt"), (Verb.Undo, "gear_bolts"),
            (Verb.Disconnect, "lines"), (Verb.Cap, "lines"), (Verb.Remove, "gear"), (Verb.Cap, "gear"),
        ],
        Outcome.Strip!.Actions.Select(action => (action.Verb, action.Target!.Name)));

    [Fact]
    public void The_refit_takes_off_what_the_strip_put_on() => Assert.Equal(
        [
            (Verb.Uncap, "gear"), (Verb.Fit, "gear"), (Verb.Uncap, "lines"), (Verb.Connect, "lines"),
            (Verb.Fasten, "gear_bolts"), (Verb.Undo, "eye_bolt"), (Verb.Remove, "eye"),
        ],
        Outcome.Refit!.Actions.Select(action => (action.Verb, action.Target!.Name)));

    [Fact]
    public void A_temporary_part_that_would_stay_on_is_named() => Assert.Equal(
        ["eye_bolt", "eye"],
        Without(Verb.Undo, Verb.Remove).OfType<NotAsBefore>().Select(failure => failure.Item.Name));

    [Fact]
    public void Nothing_is_closed_over_a_cap()
    {
        var blocked = Assert.IsType<Blocked>(Assert.Single(Without(Verb.Uncap)));
        Assert.Equal(new NamedAction(Verb.Fit, Outcome.Strip!.Procedure.Machine.Items["gear"]), blocked.Step.Action);
        Assert.IsType<HolePlugged>(blocked.Need);
    }

    [Fact]
    public void Caps_that_would_stay_on_are_named() => Assert.Equal(
        ["lines", "lines"],
        Without(Verb.Uncap, Verb.Connect, Verb.Fit, Verb.Fasten, Verb.Undo, Verb.Remove).OfType<NotAsBefore>()
            .Where(failure => failure.Item.Name == "lines").Select(failure => failure.Item.Name));

    [Fact]
    public void What_hangs_on_the_eye_is_as_heavy_as_both() =>
        Assert.Equal(81.5, Checked.Text(Text).Only.CreatePlan()!.HeaviestLift!.Kilograms);

    /// <summary>What the proof says of the refit without some of its verbs.</summary>
    private static List<RefitFailure> Without(params Verb[] verbs) =>
    [
        .. RefitProof.Failures(
            new MachineFacts(Outcome.Strip!.Procedure.Machine),
            Outcome.Strip,
            [.. Outcome.Refit!.Actions.Where(action => !verbs.Contains(action.Verb))]),
    ];
}
