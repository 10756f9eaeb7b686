using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Model;
using ProcScript.Model.Procedures;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>The part of a library that a check is about: some files, and all that they have a bearing on.</summary>
public sealed class CheckScope
{
    private readonly FrozenSet<string>? _files;
    private readonly FrozenSet<string> _used;

    private CheckScope(FrozenSet<string>? files, FrozenSet<string> used) => (_files, _used) = (files, used);

    /// <summary>The whole library.</summary>
    public static CheckScope Everything { get; } = new(null, []);

    /// <summary>
    /// What may come out otherwise when some files have changed: these, and every file that uses one of them, however far; of a picture, every file that
    /// shows it. A file that is
    /// gone has its users all the same.
    /// </summary>
    /// <param name="library">The library as it is now.</param>
    /// <param name="changed">The files that have changed, as paths of the library; those that it does not have are gone, or never were in it.</param>
    public static CheckScope TouchedBy(Library library, IEnumerable<string> changed)
    {
        ArgumentNullException.ThrowIfNull(library);
        var uses = library.Trees.ToFrozenDictionary(
            tree => tree.Key,
            tree => FileUses.Of(tree.Key, tree.Value).ToList(),
            StringComparer.Ordinal);
        var users = uses.SelectMany(file => file.Value.Select(used => (Used: used, User: file.Key)))
            .ToLookup(use => use.Used, use => use.User, StringComparer.Ordinal);
        var files = changed.ToHashSet(StringComparer.Ordinal);
        files.UnionWith(library.Figures.Where(figure => files.Contains(figure.Path)).Select(figure => figure.Declared.Path).ToList());
        var touched = FileUses.Reach(files, path => users[path]).Where(library.Trees.ContainsKey).ToFrozenSet(StringComparer.Ordinal);
        var used = FileUses.Reach(touched, path => uses.TryGetValue(path, out var paths) ? paths : []).ToFrozenSet(StringComparer.Ordinal);
        return new CheckScope(touched, used);
    }

    /// <summary>How many files of the library it holds; null where it holds all.</summary>
    public int? FileCount => _files?.Count;

    /// <summary>Whether a file is in it.</summary>
    public bool Holds(string path) => _files?.Contains(path) != false;

    /// <summary>Whether a procedure is in it, and to be proven.</summary>
    public bool Holds(Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        return Holds(procedure.Declared.Path);
    }

    /// <summary>
    /// The part of a report that is about the scope: the findings in its files, what its procedures meet with elsewhere, and the errors in
    /// the files that it uses.
    /// </summary>
    internal LibraryReport Part(LibraryReport report)
    {
        var procedures = report.Procedures.Where(procedure => Holds(procedure.Procedure)).ToImmutableArray();
        var met = procedures.SelectMany(procedure => procedure.Outcome.Findings).Select(finding => (finding.Rule.Code, finding.Primary)).ToHashSet();
        return report with
        {
            Scope = this,
            Findings = [.. report.Findings.Where(IsTold)],
            Silenced = [.. report.Silenced.Where(IsTold)],
            Suppressions = [.. report.Suppressions.Where(suppression => Holds(suppression.Path))],
            Procedures = procedures,
            Left = [.. report.Library.Procedures.Where(procedure => !Holds(procedure)).DistinctBy(procedure => procedure.Declared)],
        };

        bool IsTold(ReportedFinding reported) =>
            Holds(reported.Finding.Primary.Path)
            || met.Contains((reported.Finding.Rule.Code, reported.Finding.Primary))
            || (reported.Severity == Severity.Error && _used.Contains(reported.Finding.Primary.Path));
    }
}
