using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Mending;

/// <summary>A library between two rounds: its edited texts and what a check says of them.</summary>
internal sealed class MendState
{
    private readonly Lazy<FrozenDictionary<string, ProcedureReport>> _procedures;
    private readonly Lazy<ILookup<string, Finding>> _errors;
    private readonly Lazy<FrozenSet<(string Path, string? Name)>> _unproven;

    /// <summary>Takes the texts and the report.</summary>
    public MendState(ImmutableSortedDictionary<string, string> edited, LibraryReport report)
    {
        Edited = edited;
        Report = report;
        _procedures = new(() => report.Procedures.DistinctBy(one => one.Key).ToFrozenDictionary(one => one.Key, StringComparer.Ordinal));
        _errors = new(() => report.Findings
            .Where(reported => reported.Severity == Severity.Error)
            .Select(reported => reported.Finding)
            .ToLookup(finding => finding.Primary.Path, StringComparer.Ordinal));
        _unproven = new(() => report.Procedures
            .Where(procedure => !procedure.IsProven)
            .Select(procedure => (procedure.Procedure.Declared.Path, (string?)procedure.Procedure.Name))
            .ToFrozenSet());
    }

    /// <summary>The texts that are not as they were read, by path.</summary>
    public ImmutableSortedDictionary<string, string> Edited { get; }

    /// <summary>What a check says.</summary>
    public LibraryReport Report { get; }

    /// <summary>The edited texts as one, to compare states by.</summary>
    public string TextsKey => string.Join('\0', Edited.Select(file => $"{file.Key}\0{file.Value}"));

    /// <summary>The text of a file.</summary>
    public string TextOf(string path) => Report.Library.Trees[path].Text.Content;

    /// <summary>The errors by the file of their place.</summary>
    public ILookup<string, Finding> Errors => _errors.Value;

    /// <summary>The files that had an error before and have none, or that a procedure sees which is proven only now.</summary>
    public HashSet<string> LitSince(MendState before)
    {
        var cured = before.Errors.Select(file => file.Key).Where(path => !Errors.Contains(path));
        var proven = Report.Procedures.Where(procedure => procedure.IsProven && before.Find(procedure) is not { IsProven: true });
        return [.. cured, .. proven.SelectMany(procedure => procedure.Procedure.Files)];
    }

    /// <summary>Whether a procedure of that name in that file is not proven in every variant.</summary>
    public bool IsUnproven(string path, string? name) => _unproven.Value.Contains((path, name));

    /// <summary>The procedure of that name in the same variant, or null.</summary>
    public ProcedureReport? Find(ProcedureReport procedure) => _procedures.Value.GetValueOrDefault(procedure.Key);

    /// <summary>All that the work pack of a proven procedure says, but for its revision, its files and the places in them.</summary>
    public static string PackOf(ProcedureReport procedure) => PlanRevision.Content(procedure.CreatePlan()! with { Sources = [] });
}
