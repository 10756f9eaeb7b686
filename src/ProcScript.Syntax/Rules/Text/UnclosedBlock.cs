using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A block lacks one of its braces.</summary>
public sealed class UnclosedBlock : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1002", "unclosed-block", "A block without one of its braces", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A block lacks its closing or its opening brace. Where it should stand is told from the indentation.",
        Why: "What stands behind the block would become a part of it, or what stands in it a part of the block around.",
        Wrong: """
            machine pump "Pump" {
              part cover "cover" {
                mass 2 kg
              part rim "rim" { mass 0.1 kg }
            }
            """,
        Right: """
            machine pump "Pump" {
              part cover "cover" {
                mass 2 kg
              }
              part rim "rim" { mass 0.1 kg }
            }
            """);

    /// <param name="text">The text.</param>
    /// <param name="brace">The brace that opens the block.</param>
    /// <param name="last">The last word before the place where the block should be closed.</param>
    internal static Finding NeverClosed(SourceText text, TextSpan brace, TextSpan last)
    {
        var line = text.LineAt(brace.Start);
        var isOneLine = text.LineAt(last.Start) == line;
        var edit = isOneLine ? " }" : $"\n{Indentation(text, line)}}}";
        return new Finding(Id, $"the block of {Head(text, brace)} is never closed", Place(text, last), "expected `}` behind this")
        {
            Related = [new LabeledSpan(Place(text, brace), "the block opens here")],
            Fixes = [Insert(text, last.End, "}", edit)],
        };
    }

    /// <param name="text">The text.</param>
    /// <param name="head">The words that the block should follow.</param>
    internal static Finding NeverOpened(SourceText text, TextSpan head) =>
        new(Id, $"{Excerpt.Of(text, head)} lacks the `{{` of its block", Place(text, head), "expected `{` behind this")
        {
            Fixes = [Insert(text, head.End, "{", " {")],
        };

    private static string Head(SourceText text, TextSpan brace)
    {
        var line = text.LineSpan(text.LineAt(brace.Start));
        var before = text.Content.AsSpan(line.Start, brace.Start - line.Start);
        var start = line.Start + before.LastIndexOfAny('{', '}') + 1;
        while (start < brace.Start && char.IsWhiteSpace(text.Content[start]))
        {
            start++;
        }

        var end = brace.Start;
        while (end > start && char.IsWhiteSpace(text.Content[end - 1]))
        {
            end--;
        }

        return end > start ? Excerpt.Of(text, TextSpan.FromBounds(start, end)) : "this `{`";
    }

    private static string Indentation(SourceText text, int line)
    {
        var span = text.LineSpan(line);
        var end = span.Start;
        while (end < span.End && text.Content[end] is ' ' or '\t')
        {
            end++;
        }

        return text.Slice(TextSpan.FromBounds(span.Start, end));
    }

    private static Fix Insert(SourceText text, int position, string brace, string edit) =>
        new($"Insert `{brace}`", FixGrade.NeedsLook, [new TextEdit(Place(text, new TextSpan(position, 0)), edit)]);

    private static SourceSpan Place(SourceText text, TextSpan span) => new(text.Path, span);
}
