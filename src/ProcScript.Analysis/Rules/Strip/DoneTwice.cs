using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A step has nothing left to do.</summary>
public sealed class DoneTwice : StripFailureRule<AlreadyDone>
{
    private const int MostShown = 3;

    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3006", "done-twice", "A step has nothing left to do", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step opens, removes, isolates or sets something that is already so, by an earlier step or from the start. All such steps of "
            + "one `do` are told together: with `where needed` behind it, it leaves out what is done already.",
        Why: "The card asks for work that cannot be done. The technician looks for the bolt that is not there, or thinks the "
            + "step before was wrong.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                release guard_pins
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release 2 of guard_pins
                release rest of guard_pins
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(AlreadyDone failure, StripRun run) => failure.Call is { } call ? Describe(call, run) : NeverOn(failure) ?? StepFinding.At(
        Id,
        failure.Step,
        Already(failure),
        "nothing is left to do here",
        failure.Earlier is { } earlier ? [new LabeledSpan(earlier.VerbSpan, "done here")] : []) with
    {
        Help = "take one of the two steps out",
        Fixes = [.. StepEdits.Delete(run, failure.Step)],
    };

    /// <summary>What is said of a temporary part that is to come off and has never been on.</summary>
    private static Finding? NeverOn(AlreadyDone failure)
    {
        var opening = ActionTable.OpeningOf(failure.Target);
        return failure is { Earlier: null, Target.IsTemporary: true } && (failure.Step.Verb == opening.Verb || failure.Step.Verb == Verb.Strip)
            ? StepFinding.At(
                Id,
                failure.Step,
                $"{ItemPhrases.The(failure.Target)} is not on the machine",
                "it is temporary, so it starts off",
                [new LabeledSpan(failure.Target.Declared, "declared here")]) with
            {
                Help = $"write {ItemPhrases.Written(new NamedAction(ActionTable.Closing(failure.Target).Verb, failure.Target))} before, or take the step out",
            }
            : null;
    }

    private static Finding Describe(RepeatedCall call, StripRun run)
    {
        var all = call.Steps.Length == call.Count;
        var written = run.Library.Around(call.Call) is { } tree ? tree.Text.Quote(call.Call.Span) : "do";
        IEnumerable<LabeledSpan> done = call.Earlier is { } earlier
            ? [new LabeledSpan(earlier, "done by this call")]
            : call.Steps.Select(step => step.Earlier).OfType<Step>().DistinctBy(step => step.VerbSpan).Take(MostShown)
                .Select(step => new LabeledSpan(step.VerbSpan, "done here"));
        return new Finding(
            Id,
            $"`{written}` comes to what is done already: {ItemPhrases.List(call.Steps.Select(Already).Distinct())}",
            call.Call,
            all ? "nothing is left to do here" : $"of its {call.Count} steps {call.Steps.Length} {(call.Steps.Length == 1 ? "has" : "have")} nothing left to do")
        {
            Related = [.. done, .. call.Outer.Select(outer => new LabeledSpan(outer, "called from here"))],
            Help = "write `where needed` behind it, and it leaves out what is done already; or take the call out",
            Fixes =
            [
                new Fix(
                    "Write `where needed`",
                    FixGrade.NeedsLook,
                    [new TextEdit(new SourceSpan(call.Call.Path, new TextSpan(call.Call.Span.End, 0)), " where needed")]),
            ],
        };
    }

    private static string Already(AlreadyDone failure) => $"{ItemPhrases.The(failure.Target)} is {State(failure)} already";

    private static string State(AlreadyDone failure) => failure switch
    {
        { Target: Control control } => $"at `{control.Positions[failure.Step.Position]}`",
        { Earlier.Verb: Verb.Undo or Verb.Release or Verb.Remove or Verb.Aside } => ActionTable.Row(failure.Earlier.Verb).Done,
        { Step.Verb: Verb.Strip } => ActionTable.Row(Verb.Remove).Done,
        _ => ActionTable.Row(failure.Step.Verb).Done,
    };
}
