using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A merge that was left undecided.</summary>
public sealed class MergeLeftOpen : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1013", "merge-left-open", "A merge that nobody has decided", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A version control system has put two versions of some lines into the file, with marks around each, since it could not tell which "
            + "one holds. The first is read.",
        Why: "Two people have written something different at one place: a torque, a step, a warning. One of them has to be asked.",
        Wrong: """
            fastener m8 "M8 bolt" {
            <<<<<<< main
              torque 22 N.m
            =======
              torque 25 N.m
            >>>>>>> torque-review
            }
            """,
        Right: """
            fastener m8 "M8 bolt" {
              torque 25 N.m
            }
            """);

    internal static Finding At(SourceText text, MergeMarks marks)
    {
        var (first, last) = (Name(text, marks.First, "the first"), Name(text, marks.Last, "the second"));
        return new Finding(Id, $"a merge is not decided here: {first} and {last} differ", Place(text, marks.First), "the first version begins here")
        {
            Related =
            [
                new LabeledSpan(Place(text, marks.Middle), "the second begins here"),
                new LabeledSpan(Place(text, marks.Last), "and ends here"),
            ],
            Help = "keep the version that holds, or what is right of each, and take the marks out",
            Fixes =
            [
                Keep(first, [TextSpan.FromBounds(marks.First.Start, Next(text, marks.First)), TextSpan.FromBounds(marks.FirstEnd, Next(text, marks.Last))]),
                Keep(last, [TextSpan.FromBounds(marks.First.Start, Next(text, marks.Middle)), TextSpan.FromBounds(marks.Last.Start, Next(text, marks.Last))]),
            ],
        };

        Fix Keep(string name, ImmutableArray<TextSpan> gone) =>
            new($"Keep the lines of {name}", FixGrade.NeedsLook, [.. gone.Select(span => new TextEdit(Place(text, span), ""))]);
    }

    private static string Name(SourceText text, TextSpan mark, string otherwise) =>
        text.Slice(mark)[MergeMarks.Length..].Trim() is { Length: > 0 } name ? $"`{name}`" : otherwise;

    private static int Next(SourceText text, TextSpan line) =>
        text.LineAt(line.Start) + 1 is var next && next < text.LineCount ? text.LineSpan(next).Start : text.Content.Length;

    private static SourceSpan Place(SourceText text, TextSpan span) => new(text.Path, span);
}
