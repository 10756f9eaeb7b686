using ProcScript.Analysis.Lifting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Lifting;

/// <summary>One person lifts more than one person should.</summary>
public sealed class TooHeavyForOne : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC5061", "too-heavy-for-one", "One person lifts more than the recommended limit", Severity.Warning) { Fix = FixAvailability.Sometimes };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part comes off or goes in, goes aside or is propped without a tool, neither `people` nor `hoist` is said, and its mass is more than the recommended weight limit of "
            + "the revised NIOSH lifting equation: 23 kg for an ideal lift, less with the `reach`, `height`, `twist`, `frequency` and `grip` "
            + "that the part or the action gives; what is not given counts as ideal, the lifting as up to an hour. A shop may set the 23 kg lower (`limits.onePersonMass`). The mass is that of the "
            + "part with what is still inside it then, so a part that went off before does not count. `people 2` of the procedure counts too. A part that "
            + "swings on its hinge weighs less in the hand than the rule knows: allow it, and say so.",
        Why: "Backs are hurt by loads like these, and whoever reads the card only at the machine is alone there. The equation is for smooth "
            + "two-handed lifts by one standing person. It does not cover lifts seated, kneeling, with one hand, in tight places, or of hot "
            + "loads: most lifts in a cab are outside of it, and there less is too much. Local rules and the maker's data come first.",
        Wrong: """
            machine press "Press" {
              part motor "motor" { mass 31 kg }
            }

            procedure motor_off "Take the motor off" on press {
              stage "Motor" { remove motor }
            }
            """,
        Right: """
            machine press "Press" {
              part motor "motor" { mass 31 kg }
            }

            procedure motor_off "Take the motor off" on press {
              stage "Motor" { remove motor { hoist } }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome) =>
        from heavy in outcome.HeavyLifts
        where heavy.Lift.People == 1
        select At(outcome, heavy);

    private static Finding At(ProcedureOutcome outcome, HeavyLift heavy)
    {
        var (lift, part) = (heavy.Lift, heavy.Lift.Step.Part!);
        var team = TeamLift.LeastFor(lift.Lifted, lift.Limit);
        var words = team is null ? "hoist" : $"people {team}";
        return new Finding(
            Id,
            $"{ItemPhrases.The(part)} {LiftPhrases.Done(lift)} by one person: {LiftPhrases.Lifted(lift)}, and the recommended limit is "
                + $"{LiftPhrases.Mass(lift.Limit, lift)} ({LiftPhrases.Conditions(lift.Geometry)})",
            heavy.Step.TargetSpan,
            "too heavy for one")
        {
            Related = [new LabeledSpan(part.Declared, "its mass is written here")],
            Help = heavy.IsNamed
                ? $"write `{words}`{(lift.Step.Verb == Verb.Support ? ", or the `tool` that bears it" : "")}{LiftPhrases.OrLess(part)}"
                : $"`strip` takes it off on the way: give it a step of its own with `{words}`, or write `hoist` at the part",
            Fixes = [.. heavy.IsNamed && lift.Step.Details.People == 0 ? Say(outcome, heavy, words) : []],
        };
    }

    /// <summary>Puts the words into the block of the step, or a block with them after it.</summary>
    private static IEnumerable<Fix> Say(ProcedureOutcome outcome, HeavyLift heavy, string words)
    {
        var source = heavy.Step.Source;
        if (outcome.Strip!.Library.Around(source) is { } tree)
        {
            var hasBlock = tree.Text.Slice(source.Span).EndsWith('}');
            var at = hasBlock ? tree.Text.Content.IndexOf('{', heavy.Step.TargetSpan.Span.End) + 1 : source.Span.End;
            yield return new Fix(
                $"Write `{words}`",
                FixGrade.NeedsLook,
                [new TextEdit(new SourceSpan(source.Path, new TextSpan(at, 0)), hasBlock ? $" {words} " : $" {{ {words} }}")]);
        }
    }
}
