using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A line of which nobody has said what is in it. Common practice, no source.</summary>
public sealed class LineOnNothing : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8002", "line-on-nothing", "A line with nothing in it, and not said to be empty", Severity.Warning)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `piped by` with neither `carries` nor `on`, for which no condition asks for a fluid to be out or an energy to be isolated.",
        Why: "A line is there to carry something. With that left out, the proof lets somebody open it full or under pressure. Where it is empty, "
            + "as a vent is, write `carries none`, at the joint or once at the kind.",
        Wrong: """
            line union "union" { release "Hold the pipe still." }

            machine washer "Washer" {
              fluid oil "gear oil" { charge 1 ± 0.1 L  empty "Open the drain."  fill "Fill to the mark." }
              part gearbox "gearbox" { piped by 1 union as feed_union }
            }
            """,
        Right: """
            line union "union" { release "Hold the pipe still." }

            machine washer "Washer" {
              fluid oil "gear oil" { charge 1 ± 0.1 L  empty "Open the drain."  fill "Fill to the mark." }
              part gearbox "gearbox" { piped by 1 union as feed_union carries oil }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from joint in facts.Machine.Joints
        where joint is { Role: JointRole.Piped, On: null, Carries: null, IsOnNone: false, CarriesNone: false }
            && !joint.AskFor(NeededState.Isolated)
            && !joint.AskFor(NeededState.Empty)
        select new Finding(Id, $"nothing says what is in `{joint.Name}`: {ItemPhrases.Pieces(joint, joint.Count)}", joint.Declared, "has neither `carries` nor `on`")
        {
            Help = "write `carries` and the fluid that must be out, `on` and the energy that must be isolated, or `carries none`",
            Fixes = [.. JointEdits.Answers(joint, "carries", facts.Machine.Fluids)],
        };
}
