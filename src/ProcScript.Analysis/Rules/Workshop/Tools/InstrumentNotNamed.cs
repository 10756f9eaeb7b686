using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Tools;

/// <summary>A reading is taken, and nothing says with what. Common practice, no source.</summary>
public sealed class InstrumentNotNamed : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5063", "instrument-not-named", "A reading is taken, and nothing says with what", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `measure` with an `expect`, or the `verify` with an `expect` of an energy that the job isolates, names no instrument: no `with`, and no "
            + "`tool` at the line, at the energy, at the step or for the whole job. What begins with *read* reads something on the machine itself; pieces are counted, and a "
            + "time is read off any watch.",
        Why: "The list of what to bring lacks the instrument, and somebody takes what lies nearest. Where a circuit is proved to be off, a wrong meter "
            + "says that it is safe.",
        Wrong: """
            tool multimeter "multimeter"

            machine saw "Saw" { part motor "motor" }

            procedure motor_look "Look at the motor" on saw {
              goal inspect motor
              work {
                inspect motor
                measure "Resistance of the winding" expect 4 .. 6 ohm
              }
            }
            """,
        Right: """
            tool multimeter "multimeter"

            machine saw "Saw" { part motor "motor" }

            procedure motor_look "Look at the motor" on saw {
              goal inspect motor
              work {
                inspect motor
                measure "Resistance of the winding" with multimeter expect 4 .. 6 ohm
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome) => outcome.Procedure.Details.Tools.Any(IsInstrument)
        ? []
        : outcome.Strip!.Actions.Concat(outcome.Refit!.Actions).Select(Of).OfType<Finding>().DistinctBy(finding => finding.Primary);

    private static Finding? Of(PerformedAction action) => action switch
    {
        { Verb: Verb.Measure, Origin: WrittenStep { Step: var step } } => Of(step),
        { Verb: Verb.Measure, Origin: TestStep { Step: { } step } } => Of(step),
        { Target: Energy { VerifyExpect: { } expect, Tools.IsEmpty: true } energy, Verb: Verb.Isolate or Verb.Verify }
            when energy.VerifyAt is null or { Tools.IsEmpty: true } && StepOrigin.Details(action).Tools.IsEmpty && IsAsked(energy.Verify ?? "", expect) =>
            At(energy.VerifyAt?.Declared ?? energy.Declared, $"the {energy.Title} is proved to be off", "verify"),
        _ => null,
    };

    private static Finding? Of(Step step) => step is { Expect: { } expect, Text: { } text, Details.Tools.IsEmpty: true } && IsAsked(text, expect)
        ? At(step.VerbSpan, $"\"{text}\" is measured", "measure")
        : null;

    private static bool IsAsked(string text, Limit expect) => expect.Quantity.Unit.Dimension is not (Dimension.Time or Dimension.Count) && !ReadingWords.BeginsToRead(text);

    /// <summary>A tool of the whole job may be the instrument, but for what fits a screw.</summary>
    private static bool IsInstrument(Tool tool) => tool is { Size: null, Range: null };

    private static Finding At(SourceSpan place, string what, string word) => new(Id, $"{what}, and nothing says with what", place, "names no instrument")
    {
        Help = $"write `with` and the tool behind the text of the `{word}`; where the machine itself shows it, begin the text with *Read*",
    };
}
