using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Strip;

/// <summary>A strip finds no order of actions.</summary>
public sealed class CannotStrip : StripFailureRule<NoWayOut>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC3016", "cannot-strip", "No order of actions takes the part out", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "`strip x` looks for everything that holds and hides x, and finds something that cannot be had at this point of "
            + "the procedure.",
        Why: "Something that is needed has been taken away by an earlier step, such as power that a lever needs to move, or "
            + "two things exclude each other.",
        Wrong: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  verify "Press start: nothing moves."  restore "Unlock and switch on." }
              control ram "ram lever" {
                up, down
                needs mains live
              }
              part loom "loom"
              part lamp "work lamp" {
                wired by 1 plug_2 as lamp_plug { to loom  on mains  needs ram at down }
              }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                strip lamp
              }
            }
            """,
        Right: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  verify "Press start: nothing moves."  restore "Unlock and switch on." }
              control ram "ram lever" {
                up, down
                needs mains live
              }
              part loom "loom"
              part lamp "work lamp" {
                wired by 1 plug_2 as lamp_plug { to loom  on mains  needs ram at down }
              }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                strip lamp
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(NoWayOut failure, StripRun run) => StepFinding.At(
        Id,
        failure.Step,
        $"no order of actions takes {ItemPhrases.The(failure.Part)} out",
        failure.Lacking is { } lacking
            ? $"{ItemPhrases.Written(failure.Of)} needs {NeedPhrases.Wanted(lacking)}, and nothing brings that about here"
            : "what one action needs, another takes away",
        failure.Lacking?.Declared is { } condition ? [new LabeledSpan(condition.Declared, "needed here")] : []) with
    {
        Help = "write the actions out one by one to see where they stop",
    };
}
