using ProcScript.Analysis.Necessity;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>An energy is isolated, nothing is on it, and something is opened that is on no energy. Common practice, no source.</summary>
public sealed class IsolatedForNothing : FamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5049", "isolated-for-nothing", "An energy is isolated, and what is opened is not said to be on it", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure isolates an energy, nothing that it or its callers do needs that in any variant, and it opens a connector that is "
            + "`on` no energy; where the energy has the mark `hazard pressure`, a line. Each of these is named.",
        Why: "Whoever wrote the isolation knew why. Most often the machine does not say it: with an `on` left out, a procedure without the "
            + "isolation is proven too, and the next job has somebody unplug a live connector. So the isolation stays, and the machine is asked.",
        Wrong: """
            connector plug_3 "3-way connector"

            machine oven "Oven" {
              energy mains "house supply" {
                isolate "Pull the mains plug."
                verify  "The lamp stays dark."
                restore "Put the mains plug in."
              }
              part fan "fan" { wired by 1 plug_3 as fan_plug }
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
              energy mains "house supply" {
                isolate "Pull the mains plug."
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

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(ProcedureFamily family) =>
        from idle in family.IdleIsolations
        where !idle.Unbound.IsEmpty
        let joints = ItemPhrases.List(idle.Unbound.Select(joint => $"`{joint.Name}`"))
        select new Finding(
            Id,
            $"{ItemPhrases.The(idle.Energy)} is isolated, and no joint that is opened here is on it: is an `on {idle.Energy.Name}` missing at {joints}?",
            idle.Line,
            "nothing that is done here is said to need this")
        {
            Related = [.. idle.Unbound.Select(joint => new LabeledSpan(joint.Declared, "opened, and on no energy"))],
            Help = $"write `on {idle.Energy.Name}` at each joint that is on it, or `needs {idle.Energy.Name} isolated` at what must be worked on without it; the isolation stays",
        };
}
