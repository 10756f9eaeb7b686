using System.Collections.Immutable;
using System.Globalization;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Completing;

/// <summary>
/// Texts, figures and new names that could be written: what the document says elsewhere, titles made from names, names made from what they are
/// for. They are the writer's own, so this only saves typing.
/// </summary>
internal static class TextChoices
{
    private const int Text = 1;
    private const int Most = 5;

    /// <summary>The texts, with their quotes.</summary>
    public static IEnumerable<CompletionItem> For(Asked asked, int offset, NextWord next) => Owner(next) switch
    {
        { Rule: "useDirective" } => UsePathChoices.Paths(asked, "").Select(Quoted),
        { Rule: var rule, Words: [_, var name, ..] } when rule.EndsWith("Declaration", StringComparison.Ordinal) => [Quoted(name.Replace('_', ' '))],
        { Rule: "stage" } => StageTitles(asked, offset).Select(Quoted),
        { Rule: "property", Words: [var word] } => Before(asked, offset, word),
        _ => [],
    };

    /// <summary>What the stages of this document and of those beside it are called, the most usual first.</summary>
    private static IEnumerable<string> StageTitles(Asked asked, int offset) => Neighbours.Of(asked)
        .SelectMany(path => asked.Analysis.Library.Trees[path].Root.Declarations.OfType<ProcedureSyntax>())
        .SelectMany(procedure => procedure.Items.OfType<StageSyntax>())
        .Where(stage => !stage.Span.Touches(offset) && stage.Title is { Value.Length: > 0 })
        .CountBy(stage => stage.Title!.Value, StringComparer.Ordinal)
        .OrderByDescending(title => title.Value)
        .Select(title => title.Key)
        .Take(Most);

    /// <summary>Numbers with what goes with them.</summary>
    public static IEnumerable<CompletionItem> Figures(Asked asked, int offset, NextWord next) => Owner(next) switch
    {
        { Rule: "jointDeclaration" or "cover", Words: [_, "by"] } => new[] { "1", "2", "4", "6" }.Select(count => new CompletionItem(count, Text) { Detail = "how many" }),
        { Rule: "property", Words: [var word] } => Before(asked, offset, word),
        _ => [],
    };

    /// <summary>A name for a joint: the part that it holds, and what its kind is called.</summary>
    public static IEnumerable<CompletionItem> JointName(Asked asked, ImmutableArray<WritingFrame> frames, Machine? machine)
    {
        if (frames.FirstOrDefault(frame => frame.Rule is "jointDeclaration" or "cover") is not { Words: [_, "by", var count, var kind, "as"] }
            || frames.FirstOrDefault(frame => frame is { Rule: "partDeclaration", IsBegun: true }) is not { Words: [_, var part, ..] })
        {
            return [];
        }

        var title = asked.Analysis.Library.Kinds.FirstOrDefault(one => one.Name == kind)?.Title ?? "";
        var noun = title.Split(' ', StringSplitOptions.RemoveEmptyEntries).LastOrDefault(word => word.Length > 2 && word.All(char.IsAsciiLetterLower)) ?? kind;
        var name = $"{part}_{noun}{(count == "1" || noun.EndsWith('s') ? "" : "s")}";
        var free = Enumerable.Range(1, Most).Select(number => number == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}_{number}"))
            .FirstOrDefault(one => machine?.Items.ContainsKey(one) != true);
        return free is null ? [] : [new CompletionItem(free, Text) { Detail = "a name for it" }];
    }

    private static WritingFrame? Owner(NextWord next) =>
        next.Frames.FirstOrDefault(frame => frame.Rule is not ("text" or "count" or "quantity" or "number" or "limit" or "threadValue" or "gradeValue"));

    private static CompletionItem Quoted(string text) => new($"\"{text}\"", Text);

    /// <summary>What the document has said with the same word, the latest first; where it has said nothing yet, an example.</summary>
    private static IEnumerable<CompletionItem> Before(Asked asked, int offset, string word)
    {
        var text = asked.Tree.Text;
        var own = JobsInText.DeclarationAt(asked, offset);
        var said = asked.Tree.Root.Declarations
            .Where(declaration => declaration.Span.Start <= (own?.Span.Start ?? offset))
            .SelectMany(declaration => declaration.DescendantsAndSelf())
            .OfType<PropertySyntax>()
            .Where(property => property.Span.End < offset && property.Keyword.Text == word && property.Span.End > property.Keyword.Span.End)
            .Select(property => text.Slice(Syntax.Text.TextSpan.FromBounds(property.Keyword.Span.End, property.Span.End)).Trim())
            .Where(words => words.Length > 0 && !words.Contains('\n', StringComparison.Ordinal))
            .Reverse()
            .Distinct(StringComparer.Ordinal)
            .Take(Most)
            .Select(words => new CompletionItem(words, Text) { Detail = "as before" })
            .ToList();
        return said.Count > 0 ? said
            : PropertySentences.ExampleOf(word) is { } example ? [new CompletionItem(example, Text) { Detail = "for example" }]
            : [];
    }
}
