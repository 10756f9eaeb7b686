using ProcScript.Analysis.Bolts;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bolts;

/// <summary>A stage of tightening is not tighter than the one before.</summary>
public sealed class StagesDoNotRise : TorqueRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5013", "stages-do-not-rise", "A tightening stage is no tighter than the one before", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Of the torques that `torque` lists one after the other, one is not more than the one before it.",
        Why: "A torque wrench that is set lower than the bolt already stands clicks at once: the stage does nothing, and whoever reads the "
            + "card cannot tell which figure is the slip. Where the bolts are slackened in between, write that as steps of its own.",
        Wrong: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener head_bolt "M10 × 80 head bolt" { thread M10x1.5  grade 10.9  drive socket_16  torque 50, 40 N.m }
            """,
        Right: """
            tool socket_16 "16 mm socket" { size 16 mm }
            fastener head_bolt "M10 × 80 head bolt" { thread M10x1.5  grade 10.9  drive socket_16  torque 40, 50 N.m }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(Tightening tightening)
    {
        var stages = tightening.Torque.Stages;
        for (var i = 1; i < stages.Length; i++)
        {
            if (stages[i].BaseValue <= stages[i - 1].BaseValue)
            {
                yield return new Finding(
                    Id,
                    $"stage {i + 1} of tightening `{tightening.Name}` is no tighter than stage {i}: {stages[i].Print()} after {stages[i - 1].Print()}",
                    tightening.Place,
                    tightening.Torque.Print())
                {
                    Help = "write the stages from the least to the most; to slacken in between, write steps",
                };
                yield break;
            }
        }
    }
}
