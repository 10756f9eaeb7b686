using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>An energy has been isolated that is still needed.</summary>
public sealed class IsolatedWhileNeeded : StripFailureRule<IsolatedBefore>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3018", "isolated-while-needed", "An energy has been isolated that is still needed", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step needs an energy live, and an earlier step has isolated it.",
        Why: "Nothing moves without power: the lever stays where it is, and somebody switches the supply on again with covers "
            + "off.",
        Wrong: """
            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  verify "Press start: nothing moves."  restore "Unlock and switch on." }
              control ram "ram lever" {
                up, down
                needs mains live
              }
            }

            procedure lower_ram "Lower the ram" on press {
              stage "Ram" {
                isolate mains
                set ram to down
              }
            }
            """,
        Right: """
            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  verify "Press start: nothing moves."  restore "Unlock and switch on." }
              control ram "ram lever" {
                up, down
                needs mains live
              }
            }

            procedure lower_ram "Lower the ram" on press {
              stage "Ram" {
                set ram to down
                isolate mains
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(IsolatedBefore failure, StripRun run)
    {
        var (step, isolated) = (failure.Step, failure.Isolated);
        var isLater = IsLater(run, failure);
        var line = LinePhrases.Of(isolated.VerbSpan, step.VerbSpan, run.Library);
        return StepFinding.At(
            Id,
            step,
            Message(failure),
            $"needs {NeedPhrases.Wanted(failure.Need)}",
            [
                new LabeledSpan(isolated.VerbSpan, "isolated here"),
                new LabeledSpan(failure.Need.Declared!.Declared, $"needs {NeedPhrases.Wanted(failure.Need)}"),
            ]) with
        {
            Help = Cure(failure, isLater, line),
            Fixes = isLater
                ? [.. StepMove.After(run, isolated, step)]
                : StepPassing.CanGoBefore(run, step, isolated, failure.Need.Variable) ? [.. StepMove.Before(run, step, isolated)] : [],
        };
    }

    /// <summary>What only moves with power says so; a step that needs power says that.</summary>
    private static string Message(IsolatedBefore failure)
    {
        var energy = ItemPhrases.The(failure.Need.Energy);
        return failure is { Target: Control control, Step.Verb: Verb.Set } && control.Conditions.Contains(failure.Need.Declared!)
            ? $"{ItemPhrases.The(control)} moves only while {energy} is live, and that is isolated before it is set to "
                + $"`{control.Positions[failure.Step.Position]}`"
            : $"{energy} has been isolated when {ItemPhrases.Doing(failure.Step.Verb, failure.Target)}, which needs it live";
    }

    /// <summary>
    /// Whether it is the isolation that has to move: what lies between the two keeps the step from going before it, and nothing there needs
    /// the energy isolated.
    /// </summary>
    private static bool IsLater(StripRun run, IsolatedBefore failure) =>
        !StepPassing.CanGoBefore(run, failure.Step, failure.Isolated, failure.Need.Variable)
        && StepPassing.CanGoAfter(run, failure.Isolated, failure.Step, failure.Need.Variable);

    private static string Cure(IsolatedBefore failure, bool isLater, string line)
    {
        var energy = ItemPhrases.The(failure.Need.Energy);
        return isLater
            ? $"isolate {energy} only after this, not at {line}"
            : $"{(failure.Target is Control ? "set it" : "do this")} before {energy} is isolated ({line})";
    }
}
