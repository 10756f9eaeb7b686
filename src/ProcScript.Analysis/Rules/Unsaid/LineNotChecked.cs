using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A fluid is back, or what is in a line, and nobody looks. Where words tell what it is, PRC5053 asks for more. Common practice, no source.</summary>
public sealed class LineNotChecked : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8006", "line-not-checked", "A fluid or a line is back, and nothing is checked after", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure with a goal opens a line or empties a fluid, and once the line is closed again, or the fluid in, no check and no "
            + "measurement follows, in its own block or elsewhere. Lines whose titles tell what they carry are for PRC5053, which also reads what is checked.",
        Why: "A union with a pinched seal looks like any other, and a level is low until somebody looks.",
        Wrong: """
            line union "union" { release "Hold the pipe still." }

            machine washer "Washer" {
              fluid rinse "rinse aid" { charge 1 ± 0.1 L  empty "Open the drain."  fill "Fill to the mark." }
              part pump "pump" { piped by 1 union as pump_union carries rinse }
            }

            procedure pump_off "Take the pump off" on washer {
              goal remove pump
              stage "Pump" {
                empty rinse
                disconnect pump_union
                remove pump
              }
            }
            """,
        Right: """
            line union "union" { release "Hold the pipe still." }

            machine washer "Washer" {
              fluid rinse "rinse aid" { charge 1 ± 0.1 L  empty "Open the drain."  fill "Fill to the mark." }
              part pump "pump" { piped by 1 union as pump_union carries rinse }
            }

            procedure pump_off "Take the pump off" on washer {
              goal remove pump
              stage "Pump" {
                empty rinse
                disconnect pump_union
                remove pump
              }
              refit { check "The union stays dry." needs rinse full }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        if (outcome is not { Strip: { } strip, Refit: { } refit, Procedure.Goals.IsEmpty: false })
        {
            yield break;
        }

        // All that was opened of one circuit is looked at together, once the last of it is closed.
        var circuits =
            from action in strip.Actions
            where IsOpening(action) && RefitFinding.Step(action) is not null
            let line = action.Target as Joint
            where line is null || !(line is { CarriesNone: true, On: null } || strip.Discarded.Contains(line) || IsJudgedByWords(line, outcome))
            group action by (MachineItem?)line?.Carries ?? line?.On ?? action.Target!;
        foreach (var circuit in circuits)
        {
            var lines = circuit.Where(action => action.Target is Joint).Select(action => action.Target).ToHashSet();
            var closed = refit.Actions.LastOrDefault(action => lines.Count > 0 ? lines.Contains(action.Target) : action.Target == circuit.Key && action.Verb == Verb.Fill);
            if (closed is not null && (lines.Count > 0 || !AnyLineOf((Fluid)circuit.Key, strip)) && !refit.Actions.Any(action => action.Number >= closed.Number && TakenReading.Of(action).Any()))
            {
                yield return At(circuit.FirstOrDefault(action => action.Target is Joint) ?? circuit.First(), lines.Count > 0);
            }
        }
    }

    private static bool IsOpening(PerformedAction action) => action switch
    {
        { Verb: Verb.Empty } => true,
        { Target: Joint { Role: JointRole.Piped }, Changes: [{ Variable.Kind: StateKind.Attached, After: 0 }] } => true,
        _ => false,
    };

    /// <summary>Whether lines were opened that carry a fluid: then these are looked at.</summary>
    private static bool AnyLineOf(Fluid fluid, StripRun strip) =>
        strip.Actions.Any(action => action.Target is Joint { Role: JointRole.Piped } line && line.Carries == fluid && IsOpening(action));

    private static bool IsJudgedByWords(Joint line, ProcedureOutcome outcome) =>
        LineWords.Of(line) != LineContents.Unknown && outcome.OwnSettings.Get(SettingsTable.Wording) != WordingChoice.Neutral;

    private static Finding At(PerformedAction opened, bool isLine) => StepFinding.At(
        Id,
        RefitFinding.Step(opened)!,
        $"{ItemPhrases.Doing(opened.Verb, opened.Target)}, and once it is {(isLine ? "closed" : "in")} again nothing is checked",
        "opened here",
        new LabeledSpan(opened.Target!.Declared, "declared here")) with
    {
        Help = "write into the refit what shows that it holds, such as `check \"The union stays dry.\"`, with `needs` what has to be back",
    };
}
