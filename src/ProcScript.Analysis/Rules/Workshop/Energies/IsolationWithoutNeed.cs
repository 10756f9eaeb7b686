using ProcScript.Analysis.Necessity;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>An energy is isolated, and the machine does not say for what. Common practice, no source.</summary>
public sealed class IsolationWithoutNeed : FamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5050", "isolation-without-need", "An energy is isolated, and nothing says for what", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step isolates an energy, and nothing that the procedure or its callers do needs that in any variant. Where a joint is opened "
            + "that could be on the energy, PRC5049 asks about that joint instead. A procedure without a goal is not judged.",
        Why: "The isolation is there for a reason, and the machine does not know it: a shaft that can start, a pinch, a hot face. Said with `needs`, "
            + "it holds for every job on the machine. It is no more than a hint, for some shops isolate whatever they do; they say so in a comment.",
        Wrong: """
            clip pin "push pin"

            machine fan "Fan" {
              energy mains "24 V supply" {
                isolate "Pull the mains plug."
                verify  "The lamp stays dark."
                restore "Put the mains plug in."
              }
              part blade "blade" { held by 1 pin as blade_pin }
            }

            procedure blade_off "Take the blade off" on fan {
              goal remove blade
              stage "Blade" {
                isolate mains
                release blade_pin
                remove blade
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine fan "Fan" {
              energy mains "24 V supply" {
                isolate "Pull the mains plug."
                verify  "The lamp stays dark."
                restore "Put the mains plug in."
              }
              part blade "blade" {
                needs mains isolated  // it can start
                held by 1 pin as blade_pin
              }
            }

            procedure blade_off "Take the blade off" on fan {
              goal remove blade
              stage "Blade" {
                isolate mains
                release blade_pin
                remove blade
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(ProcedureFamily family) =>
        from idle in family.IdleIsolations
        where idle.Unbound.IsEmpty && !idle.IsCalled && family.Own.All(member => !member.Outcome.Procedure.Goals.IsEmpty)
        select new Finding(
            Id,
            $"{ItemPhrases.The(idle.Energy)} is isolated, and nothing says for what",
            idle.Line,
            "nothing that is done here is said to need this")
        {
            Help = $"write `needs {idle.Energy.Name} isolated` at what must be worked on without it, or `on {idle.Energy.Name}` at a joint; the isolation stays",
        };
}
