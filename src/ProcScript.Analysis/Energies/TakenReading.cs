using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Energies;

/// <summary>A check or a measurement of a run, with its text.</summary>
/// <param name="Text">The text.</param>
/// <param name="Expect">What the reading must be; null where none is taken.</param>
internal readonly record struct TakenReading(string Text, Limit? Expect)
{
    /// <summary>The checks and measurements of an action: its own, and those that its block asks for after it.</summary>
    public static IEnumerable<TakenReading> Of(PerformedAction action) => Of(action, StepOrigin.Details(action));

    /// <summary>The same of an action whose block is at hand.</summary>
    public static IEnumerable<TakenReading> Of(PerformedAction action, ActionDetails details)
    {
        switch (action.Origin)
        {
            case RuledCheck { Rule: { Verb: Verb.Check } rule }:
                yield return new TakenReading(rule.Text, rule.Expect);
                break;
            case WrittenStep { Step: { Verb: Verb.Measure or Verb.Check, Text: { } text } step }:
                yield return new TakenReading(text, step.Expect);
                break;
            case TestStep { Step: { Verb: Verb.Measure or Verb.Check, Text: { } text } step }:
                yield return new TakenReading(text, step.Expect);
                break;
        }

        foreach (var check in details.Checks)
        {
            yield return new TakenReading(check, null);
        }
    }

    /// <summary>Whether it can only come out right with something there: it expects a reading other than zero, or looks for a leak.</summary>
    public bool NeedsPresence => Expect is null ? LineWords.SpeaksOfLeak(Text) : !AllowsZero(Expect);

    /// <summary>Whether it is taken of an energy or a fluid that its text names.</summary>
    public bool IsOf(MachineItem named) => (Expect?.Quantity.Unit.Dimension, named) switch
    {
        (null, _) => !IsElectrical(named),
        (Dimension.Voltage or Dimension.Current, Energy) => IsElectrical(named) && !IsSource(named),
        (Dimension.Pressure or Dimension.Flow, _) => !IsElectrical(named) && !LineWords.IsOfOtherMedium(Text),
        _ => false,
    };

    /// <summary>Whether it expects just the voltage of an energy.</summary>
    public bool ExpectsVoltageOf(Energy energy) =>
        Expect is { Relation: LimitRelation.Within, Quantity: { Unit.Dimension: Dimension.Voltage } quantity }
        && ElectricSupply.Of(energy).Voltage is { } voltage
        && quantity.Low * quantity.Unit.Factor <= voltage.BaseValue
        && voltage.BaseValue <= quantity.High * quantity.Unit.Factor;

    private static bool AllowsZero(Limit expect) => expect switch
    {
        { Relation: LimitRelation.AtLeast, Quantity.High: <= 0 } => true,
        { Relation: LimitRelation.More, Quantity.High: < 0 } => true,
        { Relation: LimitRelation.AtLeast or LimitRelation.More } => false,
        { Relation: LimitRelation.AtMost or LimitRelation.Less } => true,
        { Quantity: { Low: <= 0, High: >= 0 } } => true,
        // A vacuum is made by a pump, with the fluid out.
        { Quantity.High: < 0 } => true,
        _ => false,
    };

    private static bool IsElectrical(MachineItem item) => item is Energy energy && EnergyWords.IsElectrical(energy);

    /// <summary>Whether it is a source that reads the same when it is cut off from the machine.</summary>
    private static bool IsSource(MachineItem item) => EnergyWords.IsBattery(item.Title);
}
