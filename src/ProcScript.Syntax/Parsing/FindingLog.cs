using System.Collections.Immutable;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>The findings of one file. A file that is no ProcScript at all gives a hundred of them and the number of the rest.</summary>
internal sealed class FindingLog(SourceText text)
{
    /// <summary>How many findings a file gives at most, but for the one that counts the rest.</summary>
    public const int Limit = 100;

    private readonly List<Finding> _findings = [];
    private readonly HashSet<int> _lines = [];
    private int _omitted;

    /// <summary>Whether there is room for another finding; without room it is counted only.</summary>
    public bool TakesAnother()
    {
        if (_findings.Count < Limit)
        {
            return true;
        }

        _omitted++;
        return false;
    }

    /// <summary>Adds a finding that <see cref="TakesAnother"/> made room for.</summary>
    public void Add(Finding finding)
    {
        _findings.Add(finding);
        _lines.Add(text.LineAt(finding.Primary.Span.Start));
    }

    /// <summary>Whether there is a finding on the line of a position already: what is wrong behind it may follow from that.</summary>
    public bool HasFindingOnLineOf(int position) => _lines.Contains(text.LineAt(position));

    /// <summary>The lines with a finding so far.</summary>
    public IReadOnlySet<int> Lines() => _lines.ToHashSet();

    /// <summary>All findings in the order of the text.</summary>
    public ImmutableArray<Finding> InOrder()
    {
        // Stable, so that two findings of one place keep the order in which they were made.
        var ordered = _findings.OrderBy(finding => finding.Primary.Span.Start).ToList();
        if (_omitted > 0)
        {
            ordered.Add(UnexpectedText.More(new SourceSpan(text.Path, ordered[^1].Primary.Span), _omitted));
        }

        return [.. ordered];
    }
}
