using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Settings;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>A question that a draft has left in the text.</summary>
public sealed class OpenQuestion : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5097", "open-question", "A question of a draft that is still open", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A comment begins with `draft:`: something beside it was guessed from the steps, or is not known yet.",
        Why: "Nobody has said that the machine is so. As long as such a question is open, every card of a pack that leans on it says DRAFT. "
            + "Look at the machine, put right what stands beside the comment, and take the comment out; or say what it is about without `draft:`.",
        Wrong: """
            clip pin "push pin" { release "Lift the head." }
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
              part lamp "lamp" {
                behind trim  // draft: is the lamp behind the trim?
                held by 2 pin as lamp_pins
              }
            }
            """,
        Right: """
            clip pin "push pin" { release "Lift the head." }
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
              part lamp "lamp" {
                behind trim
                held by 2 pin as lamp_pins
              }
            }
            """);

    /// <summary>The open questions of a file.</summary>
    internal static IEnumerable<Finding> Judge(SyntaxTree tree, PathSettings chosen) => chosen.SeverityOf(Id) is null
        ? []
        : DraftQuestions.In(tree).Select(question => new Finding(
            Id,
            question.Text.Length == 0 ? "a question of a draft is open" : $"a question of a draft is open: {question.Text}",
            new SourceSpan(tree.Text.Path, question.Span),
            "still open")
        {
            Help = "put right what stands beside it, and take the comment out, or its `draft:`",
        });
}
