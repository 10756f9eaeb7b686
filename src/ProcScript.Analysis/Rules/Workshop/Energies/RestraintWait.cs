using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// A restraint system is worked on without a wait, or after a short one. Four models' service literature (three makers) waits 10 s,
/// 1 min, 10 min and 10 min after the battery is off; general articles say 10 to 30 min: common practice, read in excerpts. 60 s is at
/// the low end, and so only a bound that warns.
/// </summary>
public sealed class RestraintWait : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5042", "restraint-wait", "A restraint system is worked on before it has run down", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An energy that can fire a restraint system (it has the mark `hazard restraint`, or a joint on it has) gives no `wait`, or one "
            + "under 60 s (`limits.restraintWait` may ask for more).",
        Why: "The unit that fires an airbag keeps enough charge to do so after the battery is off. How long is the manufacturer's to say: "
            + "figures from 10 s to 10 min are in use, so a short one may be right. It is a warning because nobody can see the charge; write "
            + "the manufacturer's figure, and allow a short one with its source.",
        Wrong: """
            connector squib "squib connector" { hazard restraint }

            machine cab "Cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                verify  "The dome lamp stays dark."
                restore "Refit the cable."
              }
              part loom "loom"
              part airbag "driver airbag" { hazard restraint  wired by 1 squib as airbag_plug { to loom  on battery } }
            }
            """,
        Right: """
            connector squib "squib connector" { hazard restraint }

            machine cab "Cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                wait    10 min
                verify  "The dome lamp stays dark."
                restore "Refit the cable."
              }
              part loom "loom"
              part airbag "driver airbag" { hazard restraint  wired by 1 squib as airbag_plug { to loom  on battery } }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from energy in facts.Machine.Energies
        let least = facts.Settings.Get(SettingsTable.RestraintWait)
        where energy.Wait is not { } wait || wait.BaseValue < least.BaseValue
        let restraint = facts.RestraintOn(energy)
        where restraint is not null
        select new Finding(Id, Message(energy, least), energy.Declared, energy.Wait is null ? "has no `wait`" : $"waits {energy.Wait.Print()}")
        {
            Related = restraint == energy ? [] : [new LabeledSpan(restraint.Declared, "belongs to a restraint system and is on it")],
            Help = "write the manufacturer's time as `wait`; from 10 s to 10 min are in use (common practice)",
        };

    private static string Message(Energy energy, Quantity least) => energy.Wait is { } wait
        ? $"{ItemPhrases.The(energy)} can fire a restraint, and the wait after it is isolated is {wait.Print()}, under {least.Print()}"
        : $"{ItemPhrases.The(energy)} can fire a restraint, and nobody waits after it is isolated";
}
