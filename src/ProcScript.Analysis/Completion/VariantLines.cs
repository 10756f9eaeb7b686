using System.Collections.Immutable;

namespace ProcScript.Analysis.Completion;

/// <summary>Lines that some variants of a procedure lack at one place.</summary>
/// <param name="Tests">What holds in these variants alone, as it stands behind <c>when</c>, outermost first; none where all lack the lines.</param>
/// <param name="Lines">The lines.</param>
internal sealed record VariantLines(ImmutableArray<string> Tests, ImmutableArray<string> Lines)
{
    /// <summary>The lines as people are told of them.</summary>
    public IEnumerable<string> Told =>
        Lines.Select(line => $"`{line}`" + (Tests.IsEmpty ? "" : $" ({string.Join(", ", Tests.Select(test => $"when {test}"))})"));
}
