using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A quoted text lacks one of its quotes.</summary>
public sealed class UnclosedText : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1003", "unclosed-text", "A text without one of its quotes", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A text lacks its closing or its opening quote. A text never runs over the end of its line.",
        Why: "Where the text ends and the next word begins is unknown.",
        Wrong: """
            tool socket_13 "13 mm socket
            tool socket_16 "16 mm socket"
            """,
        Right: """
            tool socket_13 "13 mm socket"
            tool socket_16 "16 mm socket"
            """);

    /// <param name="text">The text.</param>
    /// <param name="quoted">From the lone quote to where the text seems to end.</param>
    internal static Finding At(SourceText text, TextSpan quoted)
    {
        var inner = text.Content.AsSpan(quoted.Start + 1, quoted.Length - 1);
        if (LoneQuotes.IsClosing(text.Content, quoted.Start))
        {
            return new Finding(Id, "the text that ends here has no opening quote", Place(text, quoted.Start, 1), "a lone quote")
            {
                Help = "write `\"` where the text begins, or take this one out",
            };
        }

        var closing = inner.LastIndexOfAny('\u201C', '\u201D', '\u201E');
        var edit = closing >= 0 && inner[closing] != '\u201E'
            ? new TextEdit(Place(text, quoted.Start + 1 + closing, 1), "\"")
            : new TextEdit(Place(text, quoted.Start + quoted.Length, 0), "\"");
        return new Finding(Id, "this text has no closing quote", Place(text, quoted.Start, quoted.Length), "expected `\"` on this line")
        {
            Fixes = [new Fix("Close the text", FixGrade.NeedsLook, [edit])],
        };
    }

    private static SourceSpan Place(SourceText text, int start, int length) => new(text.Path, new TextSpan(start, length));
}
