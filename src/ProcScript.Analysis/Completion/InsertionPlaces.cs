using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>Finds where in the text of a procedure lines can go.</summary>
/// <param name="text">Its file.</param>
/// <param name="node">Its own text.</param>
/// <param name="titles">What a called procedure is called, by its name.</param>
internal sealed class InsertionPlaces(SourceText text, ProcedureSyntax node, Func<string, string> titles)
{
    private const string BeforeTheWork = "Before the work";

    /// <summary>Right before a step, or before the call that brings it; alerts stay with the step.</summary>
    /// <param name="step">The step.</param>
    /// <param name="outsideLoops">Whether to go before the loops that the step stands in.</param>
    /// <returns>The place; null where the step does not stand in the procedure's text.</returns>
    public InsertionPlace? Before(Step step, bool outsideLoops)
    {
        var own = OwnSpan(step);
        if (own.Path != text.Path)
        {
            return null;
        }

        var stage = StageAround(own.Span);
        var call = stage is null ? node.DescendantsAndSelf().OfType<DoSyntax>().FirstOrDefault(one => Holds(one, own.Span)) : null;
        if (stage is null && call is null)
        {
            return null;
        }

        var loop = outsideLoops ? Around<EachSyntax>(stage ?? (SyntaxNode)node, own.Span) : null;
        var start = step.Calls.IsEmpty ? StepEdits.Beginning(step) : own.Span.Start;
        var at = Math.Min(loop?.Span.Start ?? start, start);
        return new InsertionPlace(text.Path, at, StepEdits.Gap(text, at), IsBehind: false, call is null ? null : $"Before: {titles(call.Procedure.Text)}");
    }

    /// <summary>Where the strip ends: behind the last line of its last stage; in a stage more, where that is of another text or not always there.</summary>
    public InsertionPlace? AtTheEnd() => node.Items.LastOrDefault(HasStrip) switch
    {
        StageSyntax { Steps: [.., var last] } => Behind(last, null),
        { } last => Behind(last, BeforeTheWork),
        _ when node.Items.FirstOrDefault(item => item is WorkSyntax) is { Span.Start: var at } =>
            new InsertionPlace(text.Path, at, StepEdits.Gap(text, at), IsBehind: false, BeforeTheWork),
        _ => null,
    };

    /// <summary>Whether a variant comes by a place, as far as its steps tell: whether it has any in the innermost <c>when</c> around it.</summary>
    public bool IsReached(InsertionPlace place, Procedure variant)
    {
        var branch = node.DescendantsAndSelf().OfType<WhenSyntax>().LastOrDefault(one => one.Span.Start < place.At && place.At < one.Span.End);
        return branch is null
            || variant.Stages.SelectMany(stage => stage.Steps).Concat(variant.Work).Select(OwnSpan).Any(own => own.Path == text.Path && Holds(branch, own.Span));
    }

    private InsertionPlace Behind(SyntaxNode last, string? title) =>
        new(text.Path, last.Span.End, StepEdits.Gap(text, last.Span.Start), IsBehind: true, title);

    /// <summary>Where the procedure's own text brings a step: the step, or the call.</summary>
    private static SourceSpan OwnSpan(Step step) => step.Calls.IsEmpty ? step.Source : step.Calls[0];

    private static bool HasStrip(SyntaxNode item) => item is StageSyntax or DoSyntax
        || (item is EachSyntax or WhenSyntax && item.DescendantsAndSelf().Any(node => node is StageSyntax or DoSyntax));

    private StageSyntax? StageAround(TextSpan span) => Around<StageSyntax>(node, span);

    private static TNode? Around<TNode>(SyntaxNode top, TextSpan span)
        where TNode : SyntaxNode => top.DescendantsAndSelf().OfType<TNode>().FirstOrDefault(one => Holds(one, span));

    private static bool Holds(SyntaxNode node, TextSpan span) => node.Span.Start <= span.Start && span.End <= node.Span.End;
}
