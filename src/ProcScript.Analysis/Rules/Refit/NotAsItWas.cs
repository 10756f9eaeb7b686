using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>The machine that comes out differs from the one that came in.</summary>
public sealed class NotAsItWas : RefitFailureRule<NotAsBefore>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4001", "not-as-it-was", "The refit does not put something back", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "After the last step of the refit something is not as it was before the first step of the strip, and no `discard` "
            + "says so.",
        Why: "What is left open, loose or switched over is found by the customer. The proof accepts nothing that is merely "
            + "forgotten: write down what does not go back, and why.",
        Wrong: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              part bracket "bracket" { held by 2 pin as bracket_pins }
              part lamp "work lamp" {
                held by 1 pin as lamp_pin
                wired by 1 plug_2 as lamp_plug { to bracket }
              }
            }

            procedure bracket_away "Take the bracket away" on press {
              stage "Bracket" {
                unplug lamp_plug
                release bracket_pins
                remove bracket
                discard bracket because "The new lamp hangs on its own."
              }
            }
            """,
        Right: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              part bracket "bracket" { held by 2 pin as bracket_pins }
              part lamp "work lamp" {
                held by 1 pin as lamp_pin
                wired by 1 plug_2 as lamp_plug { to bracket }
              }
            }

            procedure bracket_away "Take the bracket away" on press {
              stage "Bracket" {
                unplug lamp_plug
                release bracket_pins
                remove bracket
                discard bracket because "The new lamp hangs on its own."
                discard lamp_plug because "The new lamp has its own lead."
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(NotAsBefore failure, RefitAttempt attempt)
    {
        var message = $"{ItemPhrases.The(failure.Item)} is not {Was(failure)} again after the refit";
        var lost = InverseList.LostEnd(failure.Item, attempt.Strip);
        var discard = attempt.Strip.Discards.FirstOrDefault(discard => discard.Item is Part part && lost?.IsWithin(part) == true);
        var related = discard is null
            ? new LabeledSpan(failure.Item.Declared, "declared here")
            : new LabeledSpan(discard.Step.VerbSpan, $"{ItemPhrases.The(lost!)}, its other end, is discarded here");
        var finding = RefitFinding.Step(failure.Opening) is { } step
            ? StepFinding.At(Id, step, message, "changed here", [related])
            : new Finding(Id, message, attempt.Strip.Procedure.Declared) { Related = [related] };
        return finding with { Help = $"write `discard {failure.Item.Name} because \"…\"` if it is to stay so" };
    }

    private static string Was(NotAsBefore failure) => failure.Variable.Kind switch
    {
        StateKind.Attached when failure.Before == 0 => ActionTable.Opening(failure.Item).Done,
        StateKind.Place when failure.Before == (int)PartPlace.Out => ActionTable.Opening(failure.Item).Done,
        StateKind.Capped or StateKind.Plugged => ActionTable.Row(Verb.Uncap).Done,
        StateKind.Attached => ActionTable.Closing(failure.Item).Done,
        StateKind.Slack => ActionTable.Row(Verb.Tighten).Done,
        StateKind.Place => ActionTable.Row(Verb.Fit).Done,
        StateKind.Propped => ActionTable.Row(Verb.Unsupport).Done,
        StateKind.Live or StateKind.Full => ActionTable.Closing(failure.Item).Done,
        _ => $"at `{((Control)failure.Item).Positions[failure.Before]}`",
    };
}
