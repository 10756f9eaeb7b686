using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Procedures;

/// <summary>A discard of some pieces of a joint.</summary>
public sealed class DiscardOfSome : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1121", "discard-of-some", "Some pieces of a joint are discarded", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `discard` says how many. It takes a whole joint, cover or part.",
        Why: "The joint goes back, and it is whole only with all its pieces. Which of them stay out, and why the rest holds, nobody could tell.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 6 pin as trim_pins } }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim  discard 1 of trim_pins because "It breaks." }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 6 pin as trim_pins } }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim  replace 1 of trim_pins }
            }
            """);

    internal static Finding At(MachineItem item, SourceSpan place) =>
        new(Id, $"only some of `{item.Name}` are discarded", place, "takes all or nothing")
        {
            Related = [new LabeledSpan(item.Declared, "declared here")],
            Help = "where new ones go in for them, write `replace n of` instead; what never goes back is a joint of its own in the machine",
        };
}
