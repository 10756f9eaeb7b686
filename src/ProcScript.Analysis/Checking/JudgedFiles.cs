using System.Collections.Frozen;
using ProcScript.Model;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// Where a check that says nothing has seen everything. A text that is not understood may use any file and hide any finding, a procedure
/// that is not proven hides those of all that it sees, and of a library that was read in part nobody knows who uses what.
/// </summary>
internal sealed class JudgedFiles
{
    private readonly bool _areTextsKnown;
    private readonly FrozenSet<string> _hidden;

    private JudgedFiles(bool areTextsKnown, FrozenSet<string> hidden) => (_areTextsKnown, _hidden) = (areTextsKnown, hidden);

    /// <summary>Whether that holds for all files.</summary>
    public bool AreAll => _areTextsKnown && _hidden.Count == 0;

    /// <summary>Takes note of what was not judged.</summary>
    /// <param name="library">The library.</param>
    /// <param name="unproven">The procedures that were not run, or not proven.</param>
    public static JudgedFiles Of(Library library, IEnumerable<Procedure> unproven) => new(
        library.IsWhole && !library.Findings.Any(finding => finding.Rule.DefaultSeverity == Severity.Error),
        unproven.Select(procedure => procedure.Files).Distinct().SelectMany(files => files).ToFrozenSet(StringComparer.Ordinal));

    /// <summary>Whether it holds for a file, with all that uses it.</summary>
    public bool Holds(string path) => _areTextsKnown && !_hidden.Contains(path);
}

/// <summary>How much of what a comment may speak about was judged.</summary>
/// <param name="AsksOfLibrary">Whether the rules about the library as a whole were asked.</param>
/// <param name="IsFile">Whether its file was judged, with all that uses it.</param>
/// <param name="IsLibrary">Whether all files were.</param>
internal readonly record struct JudgedExtent(bool AsksOfLibrary, bool IsFile, bool IsLibrary);
