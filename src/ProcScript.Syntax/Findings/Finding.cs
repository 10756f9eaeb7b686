using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Findings;

/// <summary>One thing that the compiler has to say, as data: every face renders this same record.</summary>
/// <param name="Rule">The rule that speaks.</param>
/// <param name="Message">One factual sentence in the author's words that stands alone; no full stop.</param>
/// <param name="Primary">Where to act.</param>
/// <param name="Label">What to see there; empty where the message says it all.</param>
public sealed record Finding(RuleInfo Rule, string Message, SourceSpan Primary, string Label = "")
{
    private readonly string _message = Message;
    private readonly string _label = Label;
    private readonly string _help = "";

    /// <summary>One factual sentence in the author's words that stands alone; no full stop.</summary>
    public string Message { get => FoldedList.Whole(_message); init => _message = value; }

    /// <summary>What to see there; empty where the message says it all.</summary>
    public string Label { get => FoldedList.Whole(_label); init => _label = value; }

    /// <summary>The other places that matter, and why.</summary>
    public ImmutableArray<LabeledSpan> Related { get; init; } = [];

    /// <summary>The cure in words, or empty.</summary>
    public string Help { get => FoldedList.Whole(_help); init => _help = value; }

    /// <summary>The cures as edits.</summary>
    public ImmutableArray<Fix> Fixes { get; init; } = [];

    /// <summary>The same with its long lists cut short.</summary>
    public Finding Shortened() => this with
    {
        Message = FoldedList.Short(_message),
        Label = FoldedList.Short(_label),
        Help = FoldedList.Short(_help),
        Related = [.. Related.Select(place => place.Shortened())],
        Fixes = [.. Fixes.Select(fix => fix.Shortened())],
    };
}
