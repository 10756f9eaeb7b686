using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Findings;

/// <summary>A cure as edits of the text.</summary>
/// <param name="Title">What it does, in the imperative.</param>
/// <param name="Grade">How far it may be trusted.</param>
/// <param name="Edits">Edits that do not overlap.</param>
public sealed record Fix(string Title, FixGrade Grade, ImmutableArray<TextEdit> Edits)
{
    private readonly string _title = Title;

    /// <summary>What it does, in the imperative.</summary>
    public string Title { get => FoldedList.Whole(_title); init => _title = value; }

    /// <summary>The same with its long lists cut short.</summary>
    public Fix Shortened() => this with { Title = FoldedList.Short(_title) };
}

/// <summary>How far a fix may be trusted.</summary>
public enum FixGrade
{
    /// <summary>The meaning stays, or becomes what the finding asks for, proven by a second check.</summary>
    Safe,

    /// <summary>A person should look at the result.</summary>
    NeedsLook,

    /// <summary>Shown, never applied.</summary>
    DisplayOnly,
}

/// <summary>Puts <paramref name="NewText"/> where <paramref name="Place"/> is.</summary>
/// <param name="Place">The stretch that goes.</param>
/// <param name="NewText">The text that comes.</param>
public readonly record struct TextEdit(SourceSpan Place, string NewText);
