using System.Collections.Immutable;
using ProcScript.Analysis.Drafting;
using ProcScript.Model;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// Says of each open question of a draft where it stands and which step is about it: the one on its line, or the one for whose item it stands in
/// the block of or right above.
/// </summary>
internal static class QuestionSteps
{
    /// <summary>The open questions that a procedure leans on.</summary>
    public static ImmutableArray<PlanQuestion> Of(Library library, Procedure procedure, ImmutableArray<PlannedStep> steps)
    {
        var nodes = new Dictionary<string, ILookup<TextSpan, TextSpan>>(StringComparer.Ordinal);
        return
        [
            .. OpenQuestions.Of(library, procedure).Select(question =>
            {
                var text = library.Trees[question.Place.Path].Text;
                var (line, column) = text.PositionAt(question.Place.Span.Start);
                var source = new PlanSource(question.Place.Path, line + 1, column + 1);
                return new PlanQuestion(question.Text, source, StepAt(question.Place.Path, text, line));
            }),
        ];

        int StepAt(string path, SourceText text, int line)
        {
            var around = nodes.TryGetValue(path, out var known) ? known : nodes[path] = Around(library.Trees[path].Root);
            var places = steps.SelectMany(step => Places(step, path, around).Select(span => (step.Number, First: text.LineAt(span.Start), Last: text.LineAt(span.End)))).ToList();
            var isAlone = text.Slice(text.LineSpan(line)).AsSpan().TrimStart().StartsWith("//", StringComparison.Ordinal);
            var next = isAlone ? NextLine(text, line) : line;
            var holding = places.Where(place => place.First <= line && line <= place.Last).ToList();
            return (holding.Count > 0 ? holding : [.. places.Where(place => place.First == next)])
                .OrderBy(place => place.Last - place.First)
                .ThenBy(place => place.Number)
                .Select(place => place.Number)
                .FirstOrDefault();
        }
    }

    /// <summary>Where a step was written, and where its item is declared.</summary>
    private static IEnumerable<TextSpan> Places(PlannedStep step, string path, ILookup<TextSpan, TextSpan> around) =>
        (step.Source.Path == path ? new[] { step.Source.Span } : [])
            .Concat(step.Target?.Declared is { } declared && declared.Path == path ? around[declared.Span] : []);

    /// <summary>The sentences by the names that stand right in them.</summary>
    private static ILookup<TextSpan, TextSpan> Around(SyntaxNode root) => root.DescendantsAndSelf()
        .Where(node => node is MemberSyntax)
        .SelectMany(node => node.Children.Where(child => child is WordSyntax or ReferenceSyntax).SelectMany(child => child.DescendantsAndSelf()), (node, name) => (name.Span, Of: node.Span))
        .ToLookup(pair => pair.Span, pair => pair.Of);

    /// <summary>The next line that has more than a comment.</summary>
    private static int NextLine(SourceText text, int line)
    {
        var next = line;
        do
        {
            next++;
        }
        while (next < text.LineCount && text.Slice(text.LineSpan(next)).AsSpan().TrimStart() is var words && (words.IsEmpty || words.StartsWith("//", StringComparison.Ordinal)));
        return next;
    }
}
