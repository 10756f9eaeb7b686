using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A part that looks heavy is lifted by hand, and nobody has said what it weighs. Common practice, no source.</summary>
public sealed class MassNotSaid : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8003", "mass-not-said", "A part that looks heavy is lifted, and has no mass", Severity.Hint);

    private const double LeastDiameter = 9.5;

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A job takes out a part without `mass` and without `hoist`, and the machine says that it is no small thing: four fasteners of M10 or "
            + "3/8 in and larger hold it (`limits.massBolts`), or a part inside it has a mass.",
        Why: "Without a mass no lift is judged, and the card says nothing of how heavy it gets. Where nobody knows it, write "
            + "`mass unknown because \"…\"`; then the card says that.",
        Wrong: """
            tool socket_16 "16 mm socket"
            fastener m10 "M10 × 30 bolt" { thread M10x1.5  length 30 mm  grade 8.8  drive socket_16  torque 44 ± 4 N.m }

            machine press "Press" { part motor "motor" { held by 4 m10 as motor_bolts } }

            procedure motor_off "Take the motor off" on press {
              stage "Motor" {
                undo motor_bolts
                remove motor
              }
            }
            """,
        Right: """
            tool socket_16 "16 mm socket"
            fastener m10 "M10 × 30 bolt" { thread M10x1.5  length 30 mm  grade 8.8  drive socket_16  torque 44 ± 4 N.m }

            machine press "Press" {
              part motor "motor" {
                mass 14 kg
                held by 4 m10 as motor_bolts
              }
            }

            procedure motor_off "Take the motor off" on press {
              stage "Motor" {
                undo motor_bolts
                remove motor
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        if (outcome.Strip is not { } strip)
        {
            yield break;
        }

        foreach (var action in strip.Actions)
        {
            if (action is not { Verb: Verb.Remove, Target: Part { Mass: null, MassUnknown: null, Hoist: false } part } || StepOrigin.Details(action).Hoist)
            {
                continue;
            }

            var bolts = strip.Facts.Ties(part).Where(joint => IsLarge(joint.Kind.Thread)).Sum(joint => joint.Count);
            var inside = part.Children.FirstOrDefault(child => child.Mass is not null);
            if (bolts >= outcome.OwnSettings.Get(SettingsTable.MassBolts) || inside is not null)
            {
                yield return At(part, inside, bolts, action);
            }
        }
    }

    private static bool IsLarge(string? thread) => thread is not null && ThreadDesignation.Parse(thread) is { Diameter: >= LeastDiameter };

    private static Finding At(Part part, Part? inside, int bolts, PerformedAction action) =>
        new(
            Id,
            inside is null
                ? $"{ItemPhrases.The(part)} is lifted, {bolts} fasteners of M10 and larger hold it, and nobody says what it weighs"
                : $"{ItemPhrases.The(part)} is lifted with {ItemPhrases.The(inside)} in it, and only that says what it weighs",
            part.Declared,
            "has no `mass`")
        {
            Related = [new LabeledSpan(StepOrigin.Source(action), "lifted here")],
            Help = "write `mass`, without what says its own inside; or `mass unknown because \"…\"`",
        };
}
