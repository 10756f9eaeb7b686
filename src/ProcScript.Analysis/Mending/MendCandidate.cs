using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Mending;

/// <summary>A fix that may be applied, with the findings that it mends: several may ask for the very same edit.</summary>
/// <param name="Findings">The findings.</param>
/// <param name="Fix">The fix.</param>
internal sealed record MendCandidate(ImmutableArray<Finding> Findings, Fix Fix)
{
    /// <summary>The finding that stands for all.</summary>
    public Finding Finding => Findings[0];

    /// <summary>What it is known by in a later round, when its places have moved.</summary>
    public (string Code, string Path, string Message, string Title) Key => KeyOf(Finding, Fix);

    /// <summary>What a fix of a finding is known by.</summary>
    public static (string Code, string Path, string Message, string Title) KeyOf(Finding finding, Fix fix) =>
        (finding.Rule.Code, finding.Primary.Path, finding.Message, fix.Title);

    /// <summary>The edits as one text.</summary>
    public static string TextOf(Fix fix) =>
        string.Join('\0', fix.Edits.Select(edit => $"{edit.Place.Path}\0{edit.Place.Span.Start}\0{edit.Place.Span.Length}\0{edit.NewText}"));
}
