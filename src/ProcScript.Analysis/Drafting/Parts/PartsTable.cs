using System.Collections.Immutable;

namespace ProcScript.Analysis.Drafting.Parts;

/// <summary>A list of parts as a table: headings, and cells in rows.</summary>
/// <param name="Headings">The headings.</param>
/// <param name="Rows">The rows, each with its line in the file.</param>
public sealed record PartsTable(ImmutableArray<string> Headings, ImmutableArray<PartsRow> Rows)
{
    /// <summary>What stands above the headings; empty for nothing.</summary>
    public string Title { get; init; } = "";
}

/// <summary>A row of a table.</summary>
/// <param name="Line">Its line in the file, counted from 1.</param>
/// <param name="Cells">Its cells; there may be fewer than headings.</param>
public sealed record PartsRow(int Line, ImmutableArray<string> Cells);

/// <summary>A list of parts that cannot be read; the message says where and why.</summary>
/// <param name="message">What is wrong, as the rest of a sentence that begins with the list's name.</param>
public sealed class PartsListException(string message) : Exception(message);
