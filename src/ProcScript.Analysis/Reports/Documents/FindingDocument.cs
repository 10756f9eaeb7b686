using System.Collections.Immutable;

namespace ProcScript.Analysis.Reports.Documents;

/// <summary>A finding.</summary>
/// <param name="Rule">The code of the rule.</param>
/// <param name="Name">The name of the rule.</param>
/// <param name="Severity">One of error, warning and hint.</param>
/// <param name="Message">One sentence that stands alone.</param>
/// <param name="Place">Where to act.</param>
/// <param name="Label">What is to be seen there; empty where the message says it all.</param>
/// <param name="Help">The cure in words, or empty.</param>
/// <param name="Related">The other places that matter, and why.</param>
/// <param name="Fixes">The cures as edits.</param>
/// <param name="Fingerprint">What it is known by from one state of the library to the next; no two findings have the same.</param>
/// <param name="Silencing">By what it is silenced; null where by nothing.</param>
public sealed record FindingDocument(
    string Rule,
    string Name,
    string Severity,
    string Message,
    PlaceDocument Place,
    string Label,
    string Help,
    ImmutableArray<RelatedDocument> Related,
    ImmutableArray<FixDocument> Fixes,
    string Fingerprint,
    SilencingDocument? Silencing);

/// <summary>A stretch of a file.</summary>
/// <param name="File">The file, relative to the library root, with forward slashes.</param>
/// <param name="Line">The first line, counted from 1.</param>
/// <param name="Column">The first column, counted from 1 in UTF-16 code units.</param>
/// <param name="EndLine">The last line, counted from 1.</param>
/// <param name="EndColumn">The column after the last one, counted from 1 in UTF-16 code units.</param>
public sealed record PlaceDocument(string File, int Line, int Column, int EndLine, int EndColumn);

/// <summary>Another place that matters.</summary>
/// <param name="Place">The place.</param>
/// <param name="Label">What is to be seen there.</param>
public sealed record RelatedDocument(PlaceDocument Place, string Label);

/// <summary>A cure as edits.</summary>
/// <param name="Title">What it does, in the imperative.</param>
/// <param name="Grade">One of safe, needs-look and display-only.</param>
/// <param name="Edits">The edits, which do not overlap.</param>
public sealed record FixDocument(string Title, string Grade, ImmutableArray<EditDocument> Edits);

/// <summary>An edit.</summary>
/// <param name="Place">The stretch that goes.</param>
/// <param name="NewText">The text that comes.</param>
public sealed record EditDocument(PlaceDocument Place, string NewText);

/// <summary>By what a finding is silenced.</summary>
/// <param name="By">One of comment and baseline.</param>
/// <param name="Place">The comment, or the entry in the baseline.</param>
/// <param name="Reason">The reason that the comment gives, or empty.</param>
public sealed record SilencingDocument(string By, PlaceDocument Place, string Reason);
