using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>Finds where in the text of a procedure lines can go.</summary>
/// <param name="text">Its file.</param>
/// <param name="node">Its own text.</param>
internal sealed class InsertionPlaces(SourceText text, ProcedureSyntax node)
{
    /// <summary>Right before a step, or before the call that brings it; alerts stay with the step.</summary>
    /// <param name="step">The step.</param>
    /// <param name="outsideLoops">Whether to go before the loops that the step stands in.</param>
    /// <returns>The place; null where the step stands in no stage of the procedure's own.</returns>
    public InsertionPlace? Before(Step step, bool outsideLoops)
    {
        var own = step.Calls.IsEmpty ? step.Source : step.Calls[0];
        if (own.Path != text.Path || StageAround(own.Span) is not { } stage)
        {
            return null;
        }

        var loop = outsideLoops ? LoopAround(stage, own.Span) : null;
        var start = step.Calls.IsEmpty ? StepEdits.Beginning(step) : own.Span.Start;
        var at = Math.Min(loop?.Span.Start ?? start, start);
        return new InsertionPlace(text.Path, at, StepEdits.Gap(text, at), IsBehind: false);
    }

    /// <summary>Behind the last step of the strip; null where that is not of the procedure's own text.</summary>
    public InsertionPlace? AtTheEnd(Procedure procedure)
    {
        if (procedure.Stages is not [.., { Steps: [.., { Calls.IsEmpty: true } last] }] || StageAround(last.Source.Span) is not { } stage)
        {
            return null;
        }

        var behind = LoopAround(stage, last.Source.Span)?.Span ?? last.Source.Span;
        return new InsertionPlace(text.Path, behind.End, StepEdits.Gap(text, behind.Start), IsBehind: true);
    }

    private StageSyntax? StageAround(TextSpan span) => node.DescendantsAndSelf().OfType<StageSyntax>().FirstOrDefault(stage => Holds(stage, span));

    private static EachSyntax? LoopAround(StageSyntax stage, TextSpan span) =>
        stage.DescendantsAndSelf().OfType<EachSyntax>().FirstOrDefault(each => Holds(each, span));

    private static bool Holds(SyntaxNode node, TextSpan span) => node.Span.Start <= span.Start && span.End <= node.Span.End;
}
