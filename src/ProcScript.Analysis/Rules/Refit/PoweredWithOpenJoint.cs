using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>
/// The refit wants power while joints on it are open, or while what guards it is off. That the machine is whole comes first in the order of
/// return to service of 29 CFR 1910.147 (e), read in two training texts.
/// </summary>
public sealed class PoweredWithOpenJoint : RefitFailureRule<PowerBeforeClosing>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4004", "powered-with-open-joint", "Power is wanted while joints on it are open or its guards are off", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A check, an order rule or a condition of the machine wants an energy live before every joint on it is closed and tight, and "
            + "before everything that hides or guards these, or that needs the energy isolated, is back in its place.",
        Why: "With power on, an open plug or union is live, leaks or moves, and somebody's hands are still in there. What has to be done under "
            + "power before the machine is whole is a `test`: it brings the energy back, and isolates it again before the work goes on.",
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
        var energy = ItemPhrases.The(failure.Energy);
        var message = $"{energy} is wanted live while {ItemPhrases.List(failure.Open.Select(Still))}";
        var related = failure.Open.Select(item => new LabeledSpan(item.Declared, $"{Still(item)}"));
        var label = failure.Wanted.Action.Verb == Verb.Restore || failure.Edges[0].Reason is Ruled { Rule: OrderRule }
            ? $"{energy} comes back before {ItemPhrases.Written(failure.Wanted)}"
            : $"{ItemPhrases.Written(failure.Wanted)} needs {energy} live";
        var finding = failure.Edges[0].Reason is Ruled ruled
            ? new Finding(Id, message, ruled.Rule.Source, label) { Related = [.. related, .. RefitFinding.Chain(failure.Edges.Skip(1))] }
            : RefitFinding.At(Id, failure.Wanted, message, label, [.. related, .. RefitFinding.Chain(failure.Edges)]);
        var closing = failure.Open[0] is Joint joint ? ActionTable.Closing(joint) : ActionTable.Row(Verb.Fit);
        return finding with
        {
            Help = failure.Edges[0].Reason is Ruled
                ? $"let {energy} come back when all of it is in place; what has to be done under power before that is a test: "
                    + $"`test \"…\" before {closing.Word} {failure.Open[0].Name} {{ power {failure.Energy.Name}  check \"…\" }}`"
                : $"where the machine cannot be closed without power, say in `refit` what may stay open meanwhile, and why: "
                    + $"`restore {failure.Energy.Name} while {string.Join(", ", failure.Open.Select(item => item.Name))} open because \"…\"`",
        };
    }

    private static string Still(MachineItem item) =>
        item is Part ? $"{ItemPhrases.The(item)} is not in place yet" : $"{ItemPhrases.The(item)} is not closed and tight yet";
}
