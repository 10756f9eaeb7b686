using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Model.Rules.Procedures;

/// <summary>An alert that no step follows.</summary>
public sealed class AlertWithoutStep : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1118", "alert-without-step", "An alert that no step follows", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An alert belongs to the step right after it, and here none follows. In a refit block it belongs to the check after it. One that "
            + "is marked `refit` belongs to what undoes the step after it, and nothing undoes work, a measurement or a check.",
        Why: "A card shows an alert before the action it speaks of. Behind the last action it comes too late.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 2 pin as trim_pins } }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" {
                release trim_pins
                remove trim
                caution "The edge is sharp. Keep your hands clear."
              }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 2 pin as trim_pins } }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" {
                release trim_pins
                caution "The edge is sharp. Keep your hands clear."
                remove trim
              }
            }
            """);

    internal static Finding At(Alert alert) =>
        new(Id, $"no step follows this {Word(alert.Word)}", alert.Source, "stands before nothing")
        {
            Help = "put it right before the step that it speaks of",
        };

    internal static Finding InTheRefit(Alert alert) =>
        new(Id, $"the refit has no step for this {Word(alert.Word)}", alert.Source, "nothing undoes the step after it")
        {
            Help = "leave out `refit`, or put it before a step that is undone",
        };

    private static string Word(SignalWord word) => word switch
    {
        SignalWord.Danger => "danger",
        SignalWord.Warning => "warning",
        SignalWord.Caution => "caution",
        _ => "notice",
    };
}
