using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>A line that an action comes from, and the <c>do</c> lines that brought it into the job.</summary>
/// <param name="Source">The line.</param>
/// <param name="Calls">The <c>do</c> lines, outermost first.</param>
internal readonly record struct ActionSource(SourceSpan Source, ImmutableArray<SourceSpan> Calls)
{
    /// <summary>All lines that an action comes from: its own, or those of what it undoes, and the rule that has it done in its own way.</summary>
    public static IEnumerable<ActionSource> Of(ActionOrigin origin) => origin switch
    {
        WrittenStep written => [Of(written.Step)],
        ExpandedStep expanded => [Of(expanded.Step)],
        InsertedCap inserted => [Of(inserted.Step)],
        InverseOf inverse => Of(inverse.Action.Origin),
        PropAgain again => Of(again.Support.Origin),
        Tightened tightened => [Of(tightened.Rule), .. Of(tightened.Undo.Origin)],
        Retorqued retorqued => [Of(retorqued.Rule)],
        RuledCheck check => [Of(check.Rule)],
        TestStep { Step: { } step } => [Of(step)],
        TestStep test => [Of(test.Rule)],
        InsertedSet { Undoes: { } undone } inserted => [.. Needed(inserted), .. Of(undone.Origin)],
        InsertedSet inserted => Needed(inserted),
        _ => [],
    };

    private static ActionSource Of(Model.Procedures.Step step) => new(step.Source, step.Calls);

    private static ActionSource Of(Model.Procedures.RefitRule rule) => new(rule.Source, rule.Calls);

    private static IEnumerable<ActionSource> Needed(InsertedSet inserted) =>
        inserted.For.Declared is { } condition ? [new ActionSource(condition.Declared, [])] : [];
}
