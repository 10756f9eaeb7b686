using ProcScript.Analysis.Lifting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Lifting;

/// <summary>A team lifts more than so many people should.</summary>
public sealed class TooFewToLift : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5062", "too-few-to-lift", "So many people are hardly enough for a lift", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Several people lift a part, move it aside or hold it up, no hoist or stand does, and its mass is more than a screening lets a team lift: for two, two thirds of the "
            + "sum of what each may lift alone by the revised NIOSH equation; for three and more, half of it. For an ideal lift that is 30.7 kg "
            + "for two and 34.5 kg for three. The shares are guidance of a national safety office (HSE), from memory; beyond three it has none.",
        Why: "A team does not lift what its members can: they get in each other's way, see less, and the load is never shared alike. The NIOSH "
            + "equation does not cover team lifts, so this is a hint to look again: measure, take off more beforehand, or use a hoist.",
        Wrong: """
            machine press "Press" {
              part motor "motor" { mass 34 kg }
            }

            procedure motor_off "Take the motor off" on press {
              stage "Motor" { remove motor { people 2 } }
            }
            """,
        Right: """
            machine press "Press" {
              part motor "motor" { mass 34 kg }
            }

            procedure motor_off "Take the motor off" on press {
              stage "Motor" { remove motor { people 3 } }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome) =>
        from heavy in outcome.HeavyLifts
        where heavy.Lift.People > 1
        select At(heavy);

    private static Finding At(HeavyLift heavy)
    {
        var (lift, part) = (heavy.Lift, heavy.Lift.Step.Part!);
        return new Finding(
            Id,
            $"{ItemPhrases.The(part)} {LiftPhrases.Done(lift)} by {lift.People} people: {LiftPhrases.Lifted(lift)}, and a screening lets so many lift "
                + $"{LiftPhrases.Mass(lift.TeamLimit, lift)} where one may lift {LiftPhrases.Mass(lift.Limit, lift)} "
                + $"({LiftPhrases.Conditions(lift.Geometry)})",
            heavy.Step.TargetSpan,
            "heavy for so many")
        {
            Related = [new LabeledSpan(part.Declared, "its mass is written here")],
            Help = TeamLift.LeastFor(lift.Lifted, lift.Limit) is { } team
                ? $"write `people {team}` or `hoist`{LiftPhrases.OrLess(part)}"
                : $"write `hoist`{LiftPhrases.OrLess(part)}",
        };
    }
}
