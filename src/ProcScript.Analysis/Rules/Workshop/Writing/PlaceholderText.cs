using ProcScript.Analysis.Prose;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>A text that still has to be written.</summary>
public sealed class PlaceholderText : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5091", "placeholder-text", "A text that still has to be written", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A text is empty or nothing but marks, or holds a word that people write where something is to come: TODO, TBD, FIXME, XXX.",
        Why: "The card prints it as it stands, and whoever works from it has to guess what was meant.",
        Wrong: """
            clip pin "push pin" { release "TODO: which tool?" }
            """,
        Right: """
            clip pin "push pin" { release "Lift the head with the trim lever." }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file)
    {
        foreach (var text in file.Texts)
        {
            if (PlaceholderWords.First(text.Value) is { Success: true } word)
            {
                yield return At(text, $"the text says \"{word.Value}\": something is still to be written", text.Place(word.Index, word.Index + word.Length));
            }
            else if (!text.Value.Any(char.IsLetterOrDigit))
            {
                yield return At(text, text.Value.Trim().Length == 0 ? "the text is empty" : $"the text says nothing but \"{text.Value.Trim()}\"", text.Whole);
            }
        }
    }

    private static Finding At(ProseText text, string message, Syntax.Text.SourceSpan place) =>
        new(Id, message, place, "to be written")
        {
            Help = text.Kind == ProseKind.Label ? "write the name or the words that belong here" : "write what is to be done, or take the text out",
        };
}
