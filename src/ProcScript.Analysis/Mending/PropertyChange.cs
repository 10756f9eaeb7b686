using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Mending;

/// <summary>
/// A property that somebody wants to stand in a block, as text: a time that becomes another, a tool more. What may stand once in a block is replaced,
/// what may stand several times is added.
/// </summary>
/// <param name="Owner">Whose block it is: an action from its first to its last word, or the name of what is declared, where it is.</param>
/// <param name="OfRefit">Whether it goes into the <c>refit { … }</c> of an action's block.</param>
/// <param name="Keyword">The property's first word, such as <c>time</c>.</param>
/// <param name="Value">What stands behind it, as sources have it.</param>
public sealed record PropertyChange(SourceSpan Owner, bool OfRefit, string Keyword, string Value)
{
    /// <summary>The property as it is written.</summary>
    public string Words => $"{Keyword} {Value}";
}
