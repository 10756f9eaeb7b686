using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Runs;
using ProcScript.Model;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis;

/// <summary>What a check of a whole library comes to.</summary>
public sealed class LibraryReport
{
    /// <summary>The library it is about.</summary>
    public required Library Library { get; init; }

    /// <summary>Every finding that no comment allows, each once, in the order of files and text, with its severity.</summary>
    public required ImmutableArray<ReportedFinding> Findings { get; init; }

    /// <summary>The procedures with what came of them, in the order of <see cref="Model.Library.Procedures"/>.</summary>
    public required ImmutableArray<ProcedureReport> Procedures { get; init; }
}

/// <summary>A finding with the severity that the driver gave it.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Severity">Its severity.</param>
public sealed record ReportedFinding(Finding Finding, Severity Severity);

/// <summary>What came of one procedure in one variant.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="IsProven">Whether strip and refit are proven.</param>
/// <param name="Outcome">The strip and the refit themselves.</param>
/// <param name="Library">The library it belongs to.</param>
public sealed record ProcedureReport(Procedure Procedure, bool IsProven, ProcedureOutcome Outcome, Library Library)
{
    /// <summary>Makes the plan, anew each time; null where the procedure is not proven.</summary>
    public Plan? CreatePlan() =>
        this is { IsProven: true, Outcome: { Strip: { } strip, Refit: { } refit } } ? PlanBuilder.Build(Library, strip, refit) : null;
}
