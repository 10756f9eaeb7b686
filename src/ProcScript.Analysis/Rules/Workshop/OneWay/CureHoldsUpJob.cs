using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Totals;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.OneWay;

/// <summary>The job stands still while something cures.</summary>
public sealed class CureHoldsUpJob : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5033", "cure-holds-up-job", "The job stands still while something cures", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A bond or a sealant cures for longer than there is other work, so that one person waits a quarter of an hour or more (`limits.cureWait`) with nothing "
            + "to do, before a step that would load it or before the job ends. The waits of all that cures in one job are added up; it is told once, at what is waited for longest.",
        Why: "The machine stands in the bay that long, and somebody who was not told takes it out too early. Where another order lets work go "
            + "on meanwhile, a rule in the refit saves the time; where it does not, a `pause` with its `time` says so on the cards.",
        Wrong: """
            tool key "key"
            tool knife "sealant knife"
            bond sealant "sealant" { tool knife  cure 2 h }
            clip cap "cap"

            machine press "Press" {
              part guard "guard" { held by 1 sealant as guard_seal { covered by 2 cap as guard_caps } }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_caps
                cut guard_seal
                remove guard
              }
            }
            """,
        Right: """
            tool key "key"
            tool knife "sealant knife"
            bond sealant "sealant" { tool knife  cure 10 min }
            clip cap "cap"

            machine press "Press" {
              part guard "guard" { held by 1 sealant as guard_seal { covered by 2 cap as guard_caps } }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_caps
                cut guard_seal
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        if (!outcome.Refit!.Actions.Any(action => action.Cure is not null))
        {
            yield break;
        }

        var steps = StepList.Of(outcome.Strip!, outcome.Refit).Steps;
        var waits = CureWaits.Of(steps);
        if (waits.Seconds >= outcome.OwnSettings.Get(SettingsTable.CureWait).BaseValue)
        {
            yield return At(waits, waits.Longest.Target!, outcome);
        }
    }

    private static Finding At(CureWaits waits, MachineItem item, ProcedureOutcome outcome)
    {
        var minutes = Math.Ceiling(waits.Seconds / 60);
        var before = waits.Before is { Target: { } target } next
            ? $"before {ItemPhrases.Written(new NamedAction(next.Verb, target))}"
            : "before the job ends";
        return new Finding(
            Id,
            $"`{outcome.Procedure.Name}` stands still for {minutes:0} min while {ItemPhrases.The(item)} cures ({waits.Longest.Cure!.Print()}), {before}",
            item.Declared,
            "nothing else is left to do meanwhile")
        {
            Related = [new LabeledSpan(outcome.Procedure.Declared, "in this job, for one")],
            Help = "bring other work between with a rule such as `… before …` in the refit, or write a `pause` with its `time` behind it",
        };
    }
}
