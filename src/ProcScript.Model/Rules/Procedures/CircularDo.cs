using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Procedures;

/// <summary>Procedures that call each other in a round.</summary>
public sealed class CircularDo : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1113", "circular-do", "Procedures that call each other in a round", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Following `do` lines from a procedure leads back to it. The line that closes the round is shown.",
        Why: "Such a procedure never ends.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 2 pin as trim_pins } }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim }
              do trim_out
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { held by 2 pin as trim_pins } }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim }
            }
            """);

    /// <summary>
    /// The round as its procedures, each with the <c>do</c> line that leads to the next; the last one leads back to the first.
    /// </summary>
    internal static Finding At(IReadOnlyList<string> names, SourceSpan[] round) => round is [var itself]
        ? new Finding(Id, $"`{names[0]}` does itself", itself, "this very procedure") { Help = "leave the line out" }
        : new Finding(Id, $"{WordList.AndSome([.. names])} do each other in a round", round[^1], $"leads back to `{names[0]}`")
        {
            Related = [.. round[..^1].Select(line => new LabeledSpan(line, "calls the next one"))],
            Help = "move what they share into a procedure that calls none of them",
        };
}
