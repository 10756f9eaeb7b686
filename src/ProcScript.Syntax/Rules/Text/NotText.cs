using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A file holds bytes that are no text.</summary>
public sealed class NotText : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1008", "not-text", "A file that is not UTF-8 text", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A file holds a zero byte, half of a character, or bytes that are not UTF-8. A file with a zero byte is not read at all.",
        Why: "The file is no text, or was saved in another encoding: a unit or a tolerance may have lost its sign.",
        Wrong: "tool socket_13 \"13 mm socket\0\"\n",
        Right: "tool socket_13 \"13 mm socket\"\n");

    internal static Finding Binary(SourceText text, int position) => At(text, position, "the file is not text: it holds a zero byte");

    internal static Finding Broken(SourceText text, int position) =>
        At(text, position, "the file holds a character that is not valid UTF-8");

    private static Finding At(SourceText text, int position, string message)
    {
        var label = string.Create(CultureInfo.InvariantCulture, $"the first one, on line {text.LineAt(position) + 1}");
        return new Finding(Id, message, new SourceSpan(text.Path, new TextSpan(position, 1)), label)
        {
            Help = "save the file as UTF-8 text",
        };
    }
}
