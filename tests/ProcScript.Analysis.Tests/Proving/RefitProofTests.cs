using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Proving;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Proving;

/// <summary>The proof knows nothing of how a refit was found: one that lacks an action, or has it at another place, fails by itself.</summary>
public sealed class RefitProofTests
{
    private static readonly ProcedureOutcome Outcome = Checked.Stage(
        """
        energy mains "mains" { isolate "Pull the plug." verify "It stays still." restore "Plug it in." }
        fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
        control table "table" { low, high }
        part hood "hood" { held by 2 pin as hood_pins }
        part pump "pump" {
          behind hood
          needs table at high
          held by 2 bolt as pump_bolts
          wired by 1 plug_2 as pump_plug { on mains }
          piped by 1 hose as pump_hose { carries oil }
        }
        """,
        """
        isolate mains
        empty oil
        release hood_pins
        remove hood
        set table to high
        unplug pump_plug
        disconnect pump_hose
        support pump
        undo pump_bolts
        remove pump
        """,
        "goal remove pump").Only.Outcome;

    public static TheoryData<int> Actions => [.. Enumerable.Range(0, Outcome.Refit!.Actions.Length)];

    [Fact]
    public void The_refit_itself_is_proven() => Assert.Empty(Failures(Outcome.Refit!.Actions));

    [Theory]
    [MemberData(nameof(Actions))]
    public void None_can_be_left_out(int index)
    {
        var left = Outcome.Refit!.Actions[index];

        var failures = Failures(Outcome.Refit!.Actions.RemoveAt(index));

        Assert.NotEmpty(failures);
        Assert.All(failures.OfType<NotAsBefore>(), failure => Assert.Equal(left.Target, failure.Item));
    }

    [Theory]
    [InlineData(Verb.Restore, "mains")]
    [InlineData(Verb.Fill, "oil")]
    [InlineData(Verb.Set, "table")]
    [InlineData(Verb.Engage, "hood_pins")]
    [InlineData(Verb.Fit, "hood")]
    [InlineData(Verb.Unsupport, "pump")]
    public void What_is_not_as_it_was_is_told_by_name(Verb verb, string item)
    {
        var actions = Outcome.Refit!.Actions;
        var from = actions.Index().First(action => action.Item.Verb == verb && action.Item.Target!.Name == item).Index;
        // What comes after it may need it, and is not the matter.
        var failures = Failures([.. actions.Take(from)]);

        Assert.Contains(failures.OfType<NotAsBefore>(), failure => failure.Item.Name == item);
    }

    private static IReadOnlyList<RefitFailure> Failures(ImmutableArray<PerformedAction> actions) =>
        [.. RefitProof.Failures(new MachineFacts(Outcome.Procedure.Machine), Outcome.Strip!, actions)];
}
