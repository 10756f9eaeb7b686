using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>A meter is held to a restraint system, or it is looked at live. Common practice, no source.</summary>
public sealed class RestraintProbed : StripRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5046", "restraint-probed", "A restraint system is measured or handled live", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `measure` that expects volts, amperes or ohms names an item with the mark `hazard restraint` by its title or in its `needs`; "
            + "or such an item is inspected, adjusted, cleaned or repaired while an energy has to be live for it.",
        Why: "The current of a meter can fire an igniter in somebody's hands. Only the maker's tester is held to a restraint system, and only "
            + "where its data say how. It is a warning because such a tester does exist; allow the step, and name it.",
        Wrong: """
            tool ohmmeter "ohmmeter"
            machine cab "Cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                wait    10 min
                verify  "The dome lamp stays dark."
                restore "Refit the cable."
              }
              part airbag "driver airbag" { hazard restraint }
            }

            procedure airbag_look "Look at the airbag" on cab {
              stage "Look" {
                isolate battery
                inspect airbag
                measure "Resistance of the driver airbag" with ohmmeter expect 2 .. 3 ohm
              }
            }
            """,
        Right: """
            machine cab "Cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                wait    10 min
                verify  "The dome lamp stays dark."
                restore "Refit the cable."
              }
              part airbag "driver airbag" { hazard restraint }
            }

            procedure airbag_look "Look at the airbag" on cab {
              stage "Look" {
                isolate battery
                inspect airbag
              }
              refit { check "The restraint lamp goes out 6 s after the ignition is on." needs battery live }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(StripRun run)
    {
        var marked = run.Procedure.Machine.Items.Values.Where(IsRestraint).OrderBy(item => item.Declared.Span.Start).ToList();
        return marked.Count == 0 ? [] : run.Actions.Select(action => Judge(action, marked)).OfType<Finding>();
    }

    private static bool IsRestraint(MachineItem item) => item.Has(Hazard.Restraint) || (item is Joint joint && HazardMarks.IsOfRestraint(joint));

    private static Finding? Judge(PerformedAction action, IReadOnlyList<MachineItem> marked) => action switch
    {
        { Verb: Verb.Measure, Origin: WrittenStep { Step: { Expect: { } expect } step } } when IsElectrical(expect) =>
            marked.FirstOrDefault(item => Names(step, item)) is { } item
                ? At(step, item, $"a meter is held to {ItemPhrases.The(item)}, which can fire", "measures at a restraint")
                : null,
        { Verb: Verb.Inspect or Verb.Adjust or Verb.Clean or Verb.Repair, Origin: WrittenStep { Step: var step }, Target: { } item }
            when IsRestraint(item) && step.Conditions.Concat(item.Conditions).FirstOrDefault(IsLive) is { Item: var energy } =>
            At(step, item, $"{ItemPhrases.Doing(step.Verb, item)} with {ItemPhrases.The(energy)} live, and can fire", "handles a restraint live"),
        _ => null,
    };

    private static bool IsLive(Condition condition) => condition.State == NeededState.Live;

    private static bool IsElectrical(Limit expect) =>
        expect.Quantity.Unit.Dimension is Dimension.Voltage or Dimension.Current or Dimension.Resistance;

    private static bool Names(Step step, MachineItem item) =>
        step.Conditions.Any(condition => condition.Item == item)
        || (item is not Joint && step.Text?.Contains(item.Title, StringComparison.OrdinalIgnoreCase) == true);

    private static Finding At(Step step, MachineItem item, string message, string label) =>
        StepFinding.At(Id, step, message, label, new LabeledSpan(item.Declared, "belongs to a restraint system")) with
        {
            Help = "leave it to the maker's tester, by the maker's data, or take the step out",
        };
}
