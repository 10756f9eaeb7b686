using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Auditing;

/// <summary>One mistake that somebody might make.</summary>
/// <param name="Sort">What is wrong.</param>
/// <param name="Place">What is taken out or replaced.</param>
/// <param name="Line">The line of it, counted from 1.</param>
/// <param name="Replacement">What stands there instead; empty where nothing does.</param>
/// <param name="Owner">The machine or the procedure it is made in.</param>
/// <param name="InProcedure">Whether that is a procedure.</param>
/// <param name="Machine">The machine that is concerned.</param>
/// <param name="Words">The mistake for a list: <c>undo hub_nut</c>, <c>wheel behind guard</c>, <c>door[right] instead of door[left]</c>.</param>
public sealed record Mistake(
    MistakeSort Sort, SourceSpan Place, int Line, string Replacement, string Owner, bool InProcedure, string Machine, string Words)
{
    /// <summary>The name, without indices, of the item that a fact is about; empty of a step.</summary>
    public string Item { get; init; } = "";

    /// <summary>The names, without indices, that a fact names, such as what the item is behind.</summary>
    public ImmutableArray<string> Named { get; init; } = [];

    /// <summary>The text with the mistake. What is taken out leaves blanks: every line stays where it was.</summary>
    public string In(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var (start, end) = (Place.Span.Start, Place.Span.End);
        var there = Replacement.Length > 0
            ? Replacement
            : string.Create(end - start, text[start..end], (blank, old) =>
            {
                for (var at = 0; at < blank.Length; at++)
                {
                    blank[at] = old[at] is '\n' or '\r' ? old[at] : ' ';
                }
            });
        return string.Concat(text.AsSpan(0, start), there, text.AsSpan(end));
    }
}
