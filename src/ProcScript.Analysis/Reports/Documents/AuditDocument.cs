using System.Collections.Immutable;
using ProcScript.Analysis.Auditing;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Reports.Documents;

/// <summary>What <c>audit --format json</c> writes.</summary>
/// <param name="Version">The version of this form; it changes when a reader of the earlier one would go wrong.</param>
/// <param name="Program">The program and its version.</param>
/// <param name="Tried">How many mistakes were made, one at a time.</param>
/// <param name="Errors">How many of them are noticed as an error.</param>
/// <param name="Warnings">How many as a warning at the most.</param>
/// <param name="Hints">How many as a hint at the most.</param>
/// <param name="Unexpected">How many only by what the library expects of itself.</param>
/// <param name="Unnoticed">Those that nothing notices, in the order of files and text.</param>
public sealed record AuditDocument(
    int Version, string Program, int Tried, int Errors, int Warnings, int Hints, int Unexpected, ImmutableArray<MistakeDocument> Unnoticed)
{
    /// <summary>The published form of a report.</summary>
    /// <param name="audit">The audit.</param>
    /// <param name="places">Puts stretches of files into their published form.</param>
    /// <param name="program">The program and its version.</param>
    internal static AuditDocument Of(AuditReport audit, Func<SourceSpan, PlaceDocument> places, string program) => new(
        1,
        program,
        audit.Tried.Length,
        audit.Count(Severity.Error),
        audit.Count(Severity.Warning),
        audit.Count(Severity.Hint),
        audit.Unexpected,
        [.. audit.Unnoticed.Select(one => new MistakeDocument(
            ReportWords.Of(one.Mistake.Sort), places(one.Mistake.Place), one.Mistake.Replacement, one.Mistake.Words, one.Mistake.Machine,
            one.Mistake.InProcedure ? one.Mistake.Owner : null, one.Packs, ReportWords.Of(one.Survival!.Reason), one.Survival.By, one.Survival.PackParts))]);
}

/// <summary>A mistake that nothing notices.</summary>
/// <param name="Sort">One of step-left-out, other-place and fact-left-out.</param>
/// <param name="Place">What was taken out or replaced.</param>
/// <param name="Replacement">What stood there instead; empty where nothing did.</param>
/// <param name="Words">The step, the fact, or what was written for what.</param>
/// <param name="Machine">The machine that it concerns.</param>
/// <param name="Procedure">The procedure that it was made in; null where it was made in the machine.</param>
/// <param name="ChangedPacks">The procedures whose packs come out otherwise with the mistake; empty where it is on no page.</param>
/// <param name="Why">Why nothing notices it: one of item-untouched, named-untouched, asked-elsewhere, never-asked, same-job and pack-only.</param>
/// <param name="AskedBy">Another step that asks for the same as the fact, such as <c>undo hub_bolts</c>; empty where there is none.</param>
/// <param name="ChangedParts">What these packs say otherwise, by the names of the members of a plan; empty where it is on no page.</param>
public sealed record MistakeDocument(
    string Sort,
    PlaceDocument Place,
    string Replacement,
    string Words,
    string Machine,
    string? Procedure,
    ImmutableArray<string> ChangedPacks,
    string Why,
    string AskedBy,
    ImmutableArray<string> ChangedParts);
