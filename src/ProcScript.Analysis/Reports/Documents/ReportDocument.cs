using System.Collections.Immutable;

namespace ProcScript.Analysis.Reports.Documents;

/// <summary>What <c>check --format json</c> writes.</summary>
/// <param name="Version">The version of this form; it changes when a reader of the earlier one would go wrong.</param>
/// <param name="Program">The program and its version.</param>
/// <param name="Findings">What was found and nothing silences, in the order of files and text.</param>
/// <param name="Silenced">What was found and a comment or the baseline silences.</param>
/// <param name="Procedures">The procedures, each once.</param>
/// <param name="NotChecked">What was left out of the check, and why.</param>
/// <param name="Summary">The numbers.</param>
public sealed record ReportDocument(
    int Version,
    string Program,
    ImmutableArray<FindingDocument> Findings,
    ImmutableArray<FindingDocument> Silenced,
    ImmutableArray<ProcedureDocument> Procedures,
    ImmutableArray<NotCheckedDocument> NotChecked,
    SummaryDocument Summary);

/// <summary>A procedure.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Place">Where it is declared.</param>
/// <param name="Verdict">One of proven, not-proven and not-checked; of several variants the worst.</param>
public sealed record ProcedureDocument(string Name, PlaceDocument Place, string Verdict);

/// <summary>Something that was left out of the check.</summary>
/// <param name="What">What was left out.</param>
/// <param name="Why">The reason.</param>
/// <param name="Place">Where it is declared; null where it is about the whole library.</param>
public sealed record NotCheckedDocument(string What, string Why, PlaceDocument? Place);

/// <summary>What the check comes to in numbers.</summary>
/// <param name="Files">The files that were asked about.</param>
/// <param name="Errors">The errors.</param>
/// <param name="Warnings">The warnings.</param>
/// <param name="Hints">The hints.</param>
/// <param name="Allowed">The findings that comments allow.</param>
/// <param name="Known">The findings that the baseline knows.</param>
/// <param name="NotListed">The findings that --max-findings left out of the list.</param>
/// <param name="Procedures">The procedures.</param>
/// <param name="Proven">The procedures that are proven.</param>
/// <param name="NotChecked">The procedures that were not run.</param>
/// <param name="Rules">The rules that have findings, the most frequent first.</param>
/// <param name="Seconds">The time that the check took; null unless it was asked for.</param>
public sealed record SummaryDocument(
    int Files,
    int Errors,
    int Warnings,
    int Hints,
    int Allowed,
    int Known,
    int NotListed,
    int Procedures,
    int Proven,
    int NotChecked,
    ImmutableArray<RuleCount> Rules,
    double? Seconds);
