using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>A refit rule wants power while joints on it are open.</summary>
public sealed class PoweredWithOpenJoint : RefitFailureRule<PowerBeforeClosing>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4004", "powered-with-open-joint", "A refit rule wants power while joints on it are open", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A check or an order rule wants an energy live before every joint on it has been closed.",
        Why: "With power on, an open plug or union is live, leaks or moves, and somebody's hands are still in there.",
        Wrong: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  verify "Press start: nothing moves."  restore "Unlock and switch on." }
              part loom "loom"
              part lamp "work lamp" { wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                unplug lamp_plug
                remove lamp
              }
              refit {
                check "The pilot lamp is lit." needs mains live before plug lamp_plug
              }
            }
            """,
        Right: """
            connector plug_2 "2-way connector"

            machine press "Press" {
              energy mains "mains supply" { isolate "Switch off at the isolator. Lock it."  verify "Press start: nothing moves."  restore "Unlock and switch on." }
              part loom "loom"
              part lamp "work lamp" { wired by 1 plug_2 as lamp_plug { to loom  on mains } }
            }

            procedure lamp_out "Take the work lamp out" on press {
              stage "Lamp" {
                isolate mains
                unplug lamp_plug
                remove lamp
              }
              refit {
                check "The pilot lamp is lit." needs mains live
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(PowerBeforeClosing failure, RefitAttempt attempt)
    {
        var open = ItemPhrases.List(failure.Open.Select(ItemPhrases.The));
        return new Finding(
            Id,
            $"{ItemPhrases.The(failure.Energy)} is wanted live while {open} {(failure.Open.Length == 1 ? "is" : "are")} still open",
            RefitFinding.Source(failure.Edges[0].Reason),
            $"{ItemPhrases.Written(failure.Wanted)} needs {ItemPhrases.The(failure.Energy)} live")
        {
            Related =
            [
                .. failure.Open.Select(joint => new LabeledSpan(joint.Declared, $"{ItemPhrases.The(joint)} is still open then")),
                .. RefitFinding.Chain(failure.Edges.Skip(1)),
            ],
            Help = $"do it after `restore {failure.Energy.Name}`, when every joint on {ItemPhrases.The(failure.Energy)} is closed",
        };
    }
}
