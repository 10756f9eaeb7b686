using System.Collections.Immutable;
using ProcScript.Analysis.Prose;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>Of several alerts the worse stands after the lesser.</summary>
public sealed class AlertsOutOfOrder : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5094", "alerts-out-of-order", "A worse alert after a lesser one", Severity.Hint)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Several alerts stand together, before one step or in one block, and a worse one follows a lesser one. The order is danger, "
            + "warning, caution, notice.",
        Why: "What can kill is read first. The cards print it first whatever the text does, so the text reads otherwise than the card that is "
            + "made of it. The order is common practice (military manuals have it; from memory).",
        Wrong: """
            machine press "Press" {
              energy mains "mains" {
                notice  "A hard switch-off loses the settings. Save them first."
                danger  "Mains voltage kills. Only a qualified person opens the box."
                isolate "Pull the plug."
                restore "Put the plug in."
              }
            }
            """,
        Right: """
            machine press "Press" {
              energy mains "mains" {
                danger  "Mains voltage kills. Only a qualified person opens the box."
                notice  "A hard switch-off loses the settings. Save them first."
                isolate "Pull the plug."
                restore "Put the plug in."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file)
    {
        foreach (var run in file.AlertRuns)
        {
            var sorted = run.OrderBy(AlertMeaning.WordOf).ToImmutableArray();
            if (LieApart(run) && Misplaced(run) is { } misplaced)
            {
                yield return At(file.Text, run, sorted, misplaced.Worse, misplaced.Lesser);
            }
        }
    }

    /// <summary>Whether none has words of another within it, as where a word and a text have changed places, which is a finding of its own.</summary>
    private static bool LieApart(ImmutableArray<AlertSyntax> run) =>
        run.Zip(run.Skip(1)).All(pair => pair.First.Span.End <= pair.Second.Span.Start);

    /// <summary>The first that is worse than one before it, with the last of those. One for the strip alone and one for the refit alone never meet.</summary>
    private static (AlertSyntax Worse, AlertSyntax Lesser)? Misplaced(ImmutableArray<AlertSyntax> run)
    {
        for (var i = 1; i < run.Length; i++)
        {
            for (var before = i - 1; before >= 0; before--)
            {
                if (AlertMeaning.WordOf(run[i]) < AlertMeaning.WordOf(run[before]) && Meet(run[i].Phase, run[before].Phase))
                {
                    return (run[i], run[before]);
                }
            }
        }

        return null;
    }

    private static bool Meet(NeedsPhase first, NeedsPhase second) => first == second || first == NeedsPhase.Both || second == NeedsPhase.Both;

    private static Finding At(
        SourceText text,
        ImmutableArray<AlertSyntax> run,
        ImmutableArray<AlertSyntax> sorted,
        AlertSyntax worse,
        AlertSyntax lesser) =>
        new(
            Id,
            $"a {worse.Keyword.Text} stands after a {lesser.Keyword.Text}: the worst comes first",
            new SourceSpan(text.Path, worse.Keyword.Span),
            "is read too late")
        {
            Related = [new LabeledSpan(new SourceSpan(text.Path, lesser.Keyword.Span), "the lesser one")],
            Help = "put them in the order danger, warning, caution, notice",
            Fixes =
            [
                new Fix(
                    "Put the worst first",
                    FixGrade.Safe,
                    [
                        .. run.Zip(sorted)
                            .Where(pair => pair.First != pair.Second)
                            .Select(pair => new TextEdit(new SourceSpan(text.Path, pair.First.Span), text.Slice(pair.Second.Span))),
                    ]),
            ],
        };
}
