using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Saying;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A part goes aside while a joint holds it that nobody has said anything of. Common practice, no source.</summary>
public sealed class HoldsWhatGoesAside : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8011", "holds-what-goes-aside", "A joint holds a part, and its way aside does not name it", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The `aside` of a part names joints that must be off or slack, and a `held by` joint that ties the part to the rest is not among them. A "
            + "joint that is reached only when the part is aside is left out, and so is one that is called a hinge, pivot, hook, tether, strap or lug.",
        Why: "With the joint left out, the proof lets the part be swung while a bolt still holds it. Where the joint stays on and lets it swing, call "
            + "it what it is, or allow it and say so.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" {
                held by 4 pin as upper_pins { at "upper edge" }
                held by 2 pin as lower_pins { at "lower edge" }
                aside "Swing the guard down." needs upper_pins
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" {
                held by 4 pin as upper_pins { at "upper edge" }
                held by 2 pin as lower_pins { at "lower edge" }
                aside "Swing the guard down." needs upper_pins, lower_pins
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from part in facts.Machine.Parts
        where part.Aside is { Joints.IsEmpty: false }
        from joint in facts.Ties(part)
        where joint.Role == JointRole.Held
            && !part.Aside!.Joints.Contains(joint)
            && !part.Aside.Conditions.Any(condition => condition.Item == joint)
            && !LetsItSwing(joint, part)
        select new Finding(Id, $"{ItemPhrases.The(joint)} holds {ItemPhrases.The(part)}, and may be tight when that goes aside", joint.Declared, "not named by the way aside")
        {
            Related = [new LabeledSpan(part.Aside!.Declared, "the way aside")],
            Help = $"add `{joint.Name}` behind `needs`; where it stays on and lets the part swing, call it a hinge, a hook or what it is",
        };

    private static bool LetsItSwing(Joint joint, Part part) =>
        joint.Conditions.Any(condition => condition.Item == part && condition.State is NeededState.OutOfTheWay or NeededState.Aside or NeededState.Out)
        || TradeNouns.Swinging().IsMatch($"{joint.Title}; {joint.Kind.Title}; {joint.At}");
}
