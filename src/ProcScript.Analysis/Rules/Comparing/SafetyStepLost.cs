using ProcScript.Analysis.Comparing;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Comparing;

/// <summary>A job makes less safe than in an earlier state of the library.</summary>
public sealed class SafetyStepLost : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5096", "safety-step-lost", "A precaution is gone or weaker than it was", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "`procscript diff` compares two states of a library: in the new one a job no longer isolates, empties or supports what it did, "
            + "though what that was for is still done; or an energy that it isolates has lost its `lock`, `bleed`, `wait` or `verify`, waits for a "
            + "shorter time, or passes a reading that did not pass before. A check of one state alone cannot see this.",
        Why: "The new state may be proven all the same: with an `on` taken out, nothing asks for the isolation any more. Whoever takes a precaution "
            + "back has to say so in the review.",
        Wrong: """
            connector plug_3 "3-way connector"

            machine oven "Oven" {
              energy mains "24 V supply" {
                isolate "Pull the mains plug."
                // It was 5 min.
                wait    10 s
                verify  "The lamp stays dark."
                restore "Put the mains plug in."
              }
              part fan "fan" { wired by 1 plug_3 as fan_plug on mains }
            }

            procedure fan_out "Take the fan out" on oven {
              stage "Fan" {
                isolate mains
                unplug fan_plug
                remove fan
              }
            }
            """,
        Right: """
            connector plug_3 "3-way connector"

            machine oven "Oven" {
              energy mains "24 V supply" {
                isolate "Pull the mains plug."
                wait    5 min
                verify  "The lamp stays dark."
                restore "Put the mains plug in."
              }
              part fan "fan" { wired by 1 plug_3 as fan_plug on mains }
            }

            procedure fan_out "Take the fan out" on oven {
              stage "Fan" {
                isolate mains
                unplug fan_plug
                remove fan
              }
            }
            """);

    internal static Finding At(SafetyChange change, SourceSpan place, string job) => new(
        Id,
        change switch
        {
            { IsStep: true } => $"{job} has lost its step `{change.Old}`",
            { Kind: "gone" } => $"the {change.Title} is isolated for {job} without the {Word(change)} that it had",
            _ => $"the {Word(change)} of the {change.Title} is weaker for {job}: {change.Old} before, {change.New} now",
        },
        place,
        change.IsStep ? "what it was for is still done" : "still isolated")
    {
        Help = $"write it again, or say in the review why people need it no longer{(change.IsStep ? "" : $": {change.Measure} {change.Old}")}",
    };

    private static string Word(SafetyChange change) => change.Measure == "expect" ? "limit of the reading" : change.Measure;
}
