using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>
/// Takes lines out of a procedure: steps and calls, with the alerts that stand before them, and a block that nothing is left in.
/// </summary>
internal sealed class LineRemoval
{
    private readonly SourceText _text;
    private readonly IReadOnlySet<TextSpan> _lines;
    private readonly List<TextSpan> _gone = [];

    private LineRemoval(SourceText text, IReadOnlySet<TextSpan> lines) => (_text, _lines) = (text, lines);

    /// <summary>The edit.</summary>
    /// <param name="text">The file.</param>
    /// <param name="procedure">The procedure in it.</param>
    /// <param name="lines">The steps and calls to take out.</param>
    public static Fix Fix(SourceText text, ProcedureSyntax procedure, IReadOnlySet<TextSpan> lines)
    {
        var removal = new LineRemoval(text, lines);
        removal.Empty(procedure.Items, bindsAlerts: false);
        return new Fix(
            lines.Count == 1 ? "Take the step out" : "Take the steps out",
            FixGrade.NeedsLook,
            [.. removal.Stretches().Select(span => new TextEdit(new SourceSpan(text.Path, StepEdits.WholeLines(text, span)), ""))]);
    }

    /// <summary>Marks what goes. Whether nothing is left.</summary>
    private bool Empty(ImmutableArray<SyntaxNode> nodes, bool bindsAlerts)
    {
        var isEmpty = true;
        var alerts = new List<TextSpan>();
        foreach (var node in nodes)
        {
            if (node is AlertSyntax && bindsAlerts)
            {
                alerts.Add(node.Span);
                continue;
            }

            if (Goes(node, bindsAlerts))
            {
                _gone.AddRange(alerts);
                _gone.Add(node.Span);
            }
            else
            {
                isEmpty = false;
            }

            alerts.Clear();
        }

        return isEmpty && alerts.Count == 0;
    }

    private bool Goes(SyntaxNode node, bool bindsAlerts)
    {
        if (node is ActionSyntax or DoSyntax)
        {
            return _lines.Contains(node.Span);
        }

        var before = _gone.Count;
        var isEmpty = node switch
        {
            StageSyntax stage => Empty(stage.Steps, bindsAlerts: true),
            WorkSyntax work => Empty(work.Steps, bindsAlerts: true),
            EachSyntax each => Empty(each.Body, bindsAlerts),
            WhenSyntax branch => Empty(branch.Body, bindsAlerts),
            _ => false,
        };

        // What was empty before is not for this edit to take away.
        if (!isEmpty || _gone.Count == before)
        {
            return false;
        }

        _gone.RemoveRange(before, _gone.Count - before);
        return true;
    }

    /// <summary>What goes, with neighbours that only blanks divide in one.</summary>
    private IEnumerable<TextSpan> Stretches()
    {
        TextSpan? open = null;
        foreach (var span in _gone.OrderBy(span => span.Start))
        {
            if (open is { } before && string.IsNullOrWhiteSpace(_text.Content[before.End..span.Start]))
            {
                open = before.Cover(span);
                continue;
            }

            if (open is { } done)
            {
                yield return done;
            }

            open = span;
        }

        if (open is { } last)
        {
            yield return last;
        }
    }
}
