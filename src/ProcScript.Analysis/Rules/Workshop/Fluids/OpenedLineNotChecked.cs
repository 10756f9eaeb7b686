using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Fluids;

/// <summary>
/// A line is opened and closed, and nothing looks whether it holds. Gas piping is tested for leakage as soon as the gas is on again
/// (NFPA 54 2006, 8.2.3, quoted in a stored page); brakes are bled after a line was open (common practice, read); others: common practice.
/// </summary>
public sealed class OpenedLineNotChecked : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5053", "opened-line-not-checked", "A line is opened, and nothing looks whether it holds after", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure opens a line of brakes, a clutch, hydraulics, fuel, gas, coolant, refrigerant or steam, as the titles of its fluid and "
            + "energy say (else those of its kind and its parts), and once it is closed again no check, `how`, `fill` or `restore` speaks of a "
            + "leak, of pressure or vacuum, of air or of a level. Of brakes, clutch and hydraulics, one has to speak of air that is let out. "
            + "The rule knows English words from a list.",
        Why: "A union with a pinched seal looks like any other. Brakes with air in them give way at the first hill, gas collects until something "
            + "lights it, and coolant is gone after an hour. It is a warning because the words may be others; allow it then, and say which step it is.",
        Wrong: """
            line union "union" { release "Hold the pipe still." }

            machine trike "Trike" {
              fluid brake_fluid "brake fluid" { charge 40 ± 5 mL  empty "Open the bleeder."  fill "Fill to the mark." }
              part caliper "caliper" { piped by 1 union as caliper_union { carries brake_fluid } }
            }

            procedure caliper_off "Take the caliper off" on trike {
              stage "Caliper" {
                empty brake_fluid
                disconnect caliper_union
                remove caliper
              }
            }
            """,
        Right: """
            line union "union" { release "Hold the pipe still." }

            machine trike "Trike" {
              fluid brake_fluid "brake fluid" { charge 40 ± 5 mL  empty "Open the bleeder."  fill "Fill until no bubbles come." }
              part caliper "caliper" { piped by 1 union as caliper_union { carries brake_fluid } }
            }

            procedure caliper_off "Take the caliper off" on trike {
              stage "Caliper" {
                empty brake_fluid
                disconnect caliper_union
                remove caliper
              }
              refit { check "Hold the lever for one minute: no drip." needs brake_fluid full }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        if (outcome is not { Strip: { } strip, Refit: { } refit })
        {
            yield break;
        }

        // Lines of one circuit are looked at together, once the last of them is closed.
        var circuits =
            from action in strip.Actions
            where action is { Target: Joint, Changes: [{ Variable.Kind: StateKind.Attached, After: 0 }] }
            let line = (Joint)action.Target!
            where line.Role == JointRole.Piped || line.Kind.Category == KindCategory.Line || line.Carries is not null
            let contents = LineWords.Of(line)
            where contents != LineContents.Unknown && !strip.Discarded.Contains(line)
            group (action, line) by (Circuit: (object?)line.Carries ?? (object?)line.On ?? line.Kind, contents);
        foreach (var circuit in circuits)
        {
            var lines = circuit.Select(one => (MachineItem)one.line).ToHashSet();
            var closed = refit.Actions.LastOrDefault(action => action.Target is { } item && lines.Contains(item) && IsClosing(action));
            if (closed is not null && Lacks(refit, closed, circuit.Key.contents) is { } lacks && RefitFinding.Step(circuit.First().action) is { } step)
            {
                yield return At(step, circuit.First().line, circuit.Count(), lacks);
            }
        }
    }

    private static bool IsClosing(PerformedAction action) =>
        action.Changes is [{ Variable.Kind: StateKind.Attached } change] && change.After > change.Before;

    private static string? Lacks(RefitRun refit, PerformedAction closed, LineContents contents)
    {
        var (isClosed, isTight, isBled) = (false, false, contents != LineContents.BledOfAir);
        foreach (var action in refit.Actions)
        {
            isClosed = isClosed || action.Number == closed.Number;
            foreach (var text in isClosed && !(isTight && isBled) ? SpokenText.Of(action) : [])
            {
                isTight = isTight || LineWords.SpeaksOfTightness(text);
                isBled = isBled || LineWords.SpeaksOfAir(text);
            }
        }

        return (isTight, isBled) switch
        {
            (false, false) => "nothing lets the air out of it or looks for a leak",
            (false, true) => "nothing looks for a leak",
            (true, false) => "nothing lets the air out of it",
            _ => null,
        };
    }

    private static Finding At(Step step, Joint line, int count, string lacks)
    {
        var what = line.Carries is { } fluid ? $", which carries {ItemPhrases.The(fluid)}," : line.On is { } energy ? $", on {ItemPhrases.The(energy)}," : "";
        var others = count > 1 ? $" with {count - 1} more of its circuit" : "";
        return StepFinding.At(
            Id,
            step,
            $"{ItemPhrases.The(line)}{what} is opened{others}, and once it is closed again {lacks}",
            "opened here",
            new LabeledSpan(line.Declared, "the line")) with
        {
            Help = "write into the refit how it is bled or looked at, such as `check \"No leak at the union, under pressure.\"`, with `needs` what has to be back",
        };
    }
}
