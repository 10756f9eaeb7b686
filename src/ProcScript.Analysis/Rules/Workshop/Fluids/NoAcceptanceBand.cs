using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Rules.Workshop.Fluids;

/// <summary>
/// A fluid is filled, and nothing says how far off is still right. Machines that charge refrigerant have to come within 15 g
/// (SAE J2788, from memory); other fluids: common practice, no source.
/// </summary>
public sealed class NoAcceptanceBand : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5051", "no-acceptance-band", "A fluid is filled, and nothing says how far off is still right", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure empties and fills a fluid whose `charge` has no tolerance, or that has no `charge`.",
        Why: "The pack has a blank for what went in and nothing to hold it against. It is a hint: a mark on a glass says as much, and some "
            + "fluids are only topped up.",
        Wrong: """
            machine mixer "Mixer" { fluid oil "gear oil" { charge 2 L  empty "Open the drain."  fill "Fill." } }

            procedure oil_new "Change the oil" on mixer {
              stage "Oil" { empty oil }
            }
            """,
        Right: """
            machine mixer "Mixer" { fluid oil "gear oil" { charge 2 ± 0.1 L  empty "Open the drain."  fill "Fill." } }

            procedure oil_new "Change the oil" on mixer {
              stage "Oil" { empty oil }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome) =>
        from action in outcome.Refit?.Actions ?? []
        where action is { Verb: Verb.Fill, Target: Fluid { Charge: null or { Form: QuantityForm.Plain } } }
        select At((Fluid)action.Target!, action);

    private static Finding At(Fluid fluid, PerformedAction filled) =>
        new(
            Id,
            fluid.Charge is { } charge
                ? $"{ItemPhrases.The(fluid)} is filled to {charge.Print()}, and nothing says how far off is still right"
                : $"{ItemPhrases.The(fluid)} is filled, and nothing says how much belongs in",
            fluid.Declared,
            fluid.Charge is null ? "has no `charge`" : "its `charge` has no tolerance")
        {
            Related = [new LabeledSpan(StepOrigin.Source(filled), "emptied here, and filled in the refit")],
            Help = fluid.Hazards.Contains(Hazard.Refrigerant)
                ? $"write `charge` with the nameplate's tolerance; a machine that charges comes within {RefrigerantService.ChargeAccuracy * 1000:0} g"
                : "write `charge` with a tolerance, from the manufacturer's data",
        };
}
