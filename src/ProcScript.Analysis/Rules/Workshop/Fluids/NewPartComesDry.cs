using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Fluids;

/// <summary>
/// A part of a refrigerant circuit is replaced, and nothing says what oil goes in with the new one. Makers give an amount for each part:
/// common practice, no source.
/// </summary>
public sealed class NewPartComesDry : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5052", "new-part-comes-dry", "A part of a refrigerant circuit is replaced, and nothing says what goes in with it", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure replaces a part with a line that carries a fluid with the mark `hazard refrigerant`, and the fluid says nothing "
            + "`with` that part.",
        Why: "The oil that lies in the old part goes to scrap with it, and a compressor that runs short of oil seizes. It is a hint, and only "
            + "of refrigerant: in other circuits what a part holds goes in with the charge.",
        Wrong: """
            line union "union" { release "Turn the collar by hand." }

            machine cooler "Cooler" {
              fluid gas "refrigerant" {
                hazard refrigerant
                charge 0.4 ± 0.015 kg
                empty  "Recover with a certified machine."
                fill   "Charge by weight."
              }
              part coil "coil" { piped by 2 union as coil_unions { carries gas } }
            }

            procedure coil_new "Replace the coil" on cooler {
              stage "Coil" {
                empty gas
                disconnect coil_unions
                remove coil
              }
              work { replace coil }
              refit { check "No gas escapes at the unions, by the detector." needs gas full }
            }
            """,
        Right: """
            supply oil "refrigerant oil"
            line union "union" { release "Turn the collar by hand." }

            machine cooler "Cooler" {
              fluid gas "refrigerant" {
                hazard refrigerant
                charge 0.4 ± 0.015 kg
                with coil add 20 mL of oil
                empty  "Recover with a certified machine."
                fill   "Charge by weight."
              }
              part coil "coil" { piped by 2 union as coil_unions { carries gas } }
            }

            procedure coil_new "Replace the coil" on cooler {
              stage "Coil" {
                empty gas
                disconnect coil_unions
                remove coil
              }
              work { replace coil }
              refit { check "No gas escapes at the unions, by the detector." needs gas full }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        if (outcome.Strip is not { } strip || !strip.Procedure.Machine.Fluids.Any(fluid => fluid.Has(Hazard.Refrigerant)))
        {
            return [];
        }

        return
            from action in strip.Actions
            where action is { Verb: Verb.Replace, Origin: WrittenStep, Target: Part }
            let part = (Part)action.Target!
            from line in part.Joints
            where line.Carries is { } fluid && fluid.Has(Hazard.Refrigerant) && fluid.Changes.All(change => !change.Part.IsWithin(part))
            group line by action into lines
            select At(((WrittenStep)lines.Key.Origin).Step, (Part)lines.Key.Target!, lines.First());
    }

    private static Finding At(Step step, Part part, Joint line) =>
        StepFinding.At(
            Id,
            step,
            $"{ItemPhrases.The(part)} is replaced, and nothing says what {ItemPhrases.The(line.Carries!)} needs with a new one",
            "a new one comes dry",
            new LabeledSpan(line.Declared, $"carries {ItemPhrases.The(line.Carries!)}")) with
        {
            Help = $"write `with {part.Name} add …` at {ItemPhrases.The(line.Carries!)}, from the manufacturer's data",
        };
}
