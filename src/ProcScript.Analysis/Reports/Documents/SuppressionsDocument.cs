using System.Collections.Immutable;

namespace ProcScript.Analysis.Reports.Documents;

/// <summary>What <c>suppressions --format json</c> writes.</summary>
/// <param name="Version">The version of this form; it changes when a reader of the earlier one would go wrong.</param>
/// <param name="Program">The program and its version.</param>
/// <param name="Suppressions">The <c>// proc: allow</c> comments, in the order of files and text.</param>
public sealed record SuppressionsDocument(int Version, string Program, ImmutableArray<SuppressionDocument> Suppressions);

/// <summary>A <c>// proc: allow</c> comment.</summary>
/// <param name="Place">The comment.</param>
/// <param name="Rule">The code of the rule; what is written where it names none.</param>
/// <param name="Name">The name of the rule; empty where it names none.</param>
/// <param name="Reason">The reason; empty where none is given.</param>
/// <param name="Until">The last day on which it holds, as year, month and day; null where it names none.</param>
/// <param name="State">One of used, unused, expired, unknown-rule, rule-off, not-asked and not-judged.</param>
public sealed record SuppressionDocument(PlaceDocument Place, string Rule, string Name, string Reason, string? Until, string State);
