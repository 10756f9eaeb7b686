using System.Collections.Immutable;

namespace ProcScript.Cards;

/// <summary>What a rendering gave: a whole document, or the faults that kept it from being made.</summary>
/// <param name="Text">The document, lines ended by <c>\n</c>; empty when there are faults.</param>
/// <param name="Faults">What is wrong with the templates.</param>
public sealed record PackText(string Text, ImmutableArray<TemplateFault> Faults)
{
    /// <summary>Whether there is a document.</summary>
    public bool Succeeded => Faults.IsEmpty;

    internal static PackText Of(string text) => new(text, []);

    internal static PackText Of(ImmutableArray<TemplateFault> faults) => new("", faults);
}
