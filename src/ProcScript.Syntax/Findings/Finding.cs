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
    /// <summary>The other places that matter, and why.</summary>
    public ImmutableArray<LabeledSpan> Related { get; init; } = [];

    /// <summary>The cure in words, or empty.</summary>
    public string Help { get; init; } = "";

    /// <summary>The cures as edits.</summary>
    public ImmutableArray<Fix> Fixes { get; init; } = [];
}
