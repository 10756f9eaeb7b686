using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A line is opened while its fluid is in.</summary>
public sealed class LineFull : StripFailureRule<StillFull>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3005", "line-full", "A line is opened while its fluid is in", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint that the machine says `carries` a fluid is opened, and no earlier step empties that fluid.",
        Why: "What is in the line comes out: under pressure, hot, cold or harmful to the place it runs to. Some fluids may "
            + "only be recovered by licensed people.",
        Wrong: """
            line union "hose union" { release "Turn the collar by hand." }

            machine press "Press" {
              fluid oil "gear oil" { charge 2 ± 0.1 L  empty "Drain into a clean pan."  fill "Fill to the mark." }
              part pump "pump" {
                piped by 2 union as pump_unions { carries oil }
              }
            }

            procedure pump_out "Take the pump out" on press {
              stage "Pump" {
                disconnect pump_unions
                remove pump
              }
            }
            """,
        Right: """
            line union "hose union" { release "Turn the collar by hand." }

            machine press "Press" {
              fluid oil "gear oil" { charge 2 ± 0.1 L  empty "Drain into a clean pan."  fill "Fill to the mark." }
              part pump "pump" {
                piped by 2 union as pump_unions { carries oil }
              }
            }

            procedure pump_out "Take the pump out" on press {
              stage "Pump" {
                empty oil
                disconnect pump_unions
                remove pump
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(StillFull failure, StripRun run)
    {
        var empty = new NamedAction(Verb.Empty, failure.Fluid);
        var late = LateStep.Find(run, failure.Step, empty);
        var found = StepFinding.At(
            Id,
            failure.Step,
            $"{ItemPhrases.The(failure.Fluid)} is still in when {ItemPhrases.Doing(failure.Step.Verb, failure.Joint)}",
            $"{ItemPhrases.The(failure.Fluid)} is not emptied before",
            [new LabeledSpan(failure.Joint.Declared, $"carries {ItemPhrases.The(failure.Fluid)}")]);
        return late is null
            ? found with
            {
                Help = $"{ItemPhrases.Cue(empty)} first",
                Fixes = [.. StepEdits.InsertBefore(run, failure.Step, [empty])],
            }
            : found with
            {
                Related = [.. found.Related, new LabeledSpan(late.VerbSpan, "emptied only here")],
                Help = $"{ItemPhrases.Cue(empty)} first, not only at {LinePhrases.Of(late.VerbSpan, failure.Step.VerbSpan, run.Library)}",
                Fixes = LateStep.CanComeForward(run, late, failure.Step, new StateVariable(StateKind.Full, failure.Fluid.Index))
                    ? [.. StepMove.Before(run, late, failure.Step)]
                    : [],
            };
    }
}
