using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// A verification that a live circuit passes, or that a dead one fails. What is off reads zero: 0 V, 0 A, 0 bar over the air's. To verify
/// that the isolation holds is the last step of 29 CFR 1910.147 (d), read in the annual CFR edition of 2002.
/// </summary>
public sealed class VerificationPassesLive : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5048", "verification-passes-live", "A verification that a live circuit passes", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The `verify` of an energy expects volts, amperes, pressure, force or flow, and what it expects has no upper end (`>`, `>=`), leaves "
            + "out what a dead circuit reads (zero), or goes up to what a live one reads: four fifths of the voltage or pressure in the energy's "
            + "title, for a flat battery still gives that. A vacuum may be expected to be gone: `>= -0.1 bar`.",
        Why: "It is an error because the step proves the opposite of what it is for: the meter reads 12 V, the card says that 12 V is right, and "
            + "the hand goes in. A reading to prove that the supply is back belongs in a check of the refit, with `needs` and `live`.",
        Wrong: """
            machine van "Van" {
              energy battery "12 V battery" {
                isolate "Open the main switch."
                verify  "Measure at the fuse box" expect 11 .. 13 V
                restore "Close the main switch."
              }
            }
            """,
        Right: """
            machine van "Van" {
              energy battery "12 V battery" {
                isolate "Open the main switch."
                verify  "Measure at the fuse box" expect <= 0.5 V
                restore "Close the main switch."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from energy in facts.Machine.Energies
        let fault = DeadReading.Fault(energy)
        where fault is not null
        select At(energy, energy.VerifyExpect!, fault.Value);

    private static Finding At(Energy energy, Limit expect, DeadReadingFault fault) =>
        new(Id, $"{ItemPhrases.The(energy)} is proved off by a reading of {expect.Print()}, {Why(energy, expect, fault)}", energy.Declared, "its `verify` proves nothing")
        {
            Help = $"expect what is left when it is off, such as `expect {Example(expect.Quantity.Unit)}`",
        };

    private static string Why(Energy energy, Limit expect, DeadReadingFault fault) => fault switch
    {
        DeadReadingFault.NoEnd => "which has no upper end: a live circuit passes",
        DeadReadingFault.NotDead => "and what is off reads zero",
        _ => $"and live it has {DeadReading.Own(energy, expect.Quantity.Unit.Dimension)!.Print()}: a live circuit passes",
    };

    private static string Example(Unit unit) => unit.Dimension switch
    {
        Dimension.Voltage => "<= 1 V",
        Dimension.Current => "<= 0.1 A",
        Dimension.Pressure => "<= 0.1 bar",
        Dimension.Force => "<= 1 N",
        _ => "<= 0.1 L/min",
    };
}
