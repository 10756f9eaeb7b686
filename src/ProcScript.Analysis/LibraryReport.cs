using System.Collections.Immutable;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Reports;
using ProcScript.Analysis.Runs;
using ProcScript.Model;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis;

/// <summary>What a check of a whole library comes to: the one record that every output renders.</summary>
public sealed record LibraryReport
{
    /// <summary>The library it is about.</summary>
    public required Library Library { get; init; }

    /// <summary>What was chosen about the check.</summary>
    public required CheckSettings Settings { get; init; }

    /// <summary>Every finding that nothing silences, each once, in the order of files and text, with its severity.</summary>
    public required ImmutableArray<ReportedFinding> Findings { get; init; }

    /// <summary>The findings that a comment or the baseline silences, in the same order; each says by what.</summary>
    public ImmutableArray<ReportedFinding> Silenced { get; init; } = [];

    /// <summary>The <c>// proc: allow</c> comments with what came of them, in the order of files and text.</summary>
    public ImmutableArray<ReportedSuppression> Suppressions { get; init; } = [];

    /// <summary>The procedures with what came of them, in the order of <see cref="Model.Library.Procedures"/>.</summary>
    public required ImmutableArray<ProcedureReport> Procedures { get; init; }

    /// <summary>The part of the library that was checked; null where all of it was.</summary>
    public CheckScope? Scope { get; init; }

    /// <summary>The procedures that were left, since no change has touched them, in whatever variants they have.</summary>
    public ImmutableArray<Procedure> Left { get; init; } = [];

    /// <summary>How many these are; null where everything was checked.</summary>
    public int? LeftCount => Scope is { FileCount: not null } ? Left.Length : null;

    /// <summary>The path of the baseline that the findings were held against; null where there was none.</summary>
    public string? Baseline { get; init; }

    /// <summary>The texts that findings are about besides the sources, such as settings and a baseline, by path.</summary>
    public ImmutableSortedDictionary<string, SourceText> OtherTexts { get; init; } = ImmutableSortedDictionary.Create<string, SourceText>(StringComparer.Ordinal);

    /// <summary>The text of a file that a finding is about; null where it could not be read.</summary>
    public SourceText? TextOf(string path) => Library.Trees.GetValueOrDefault(path)?.Text ?? OtherTexts.GetValueOrDefault(path);

    /// <summary>The first and the last place of a stretch, counted from 0; of a file that could not be read, its beginning.</summary>
    public ((int Line, int Column) Start, (int Line, int Column) End) LinesOf(SourceSpan place) =>
        TextOf(place.Path) is { } text ? (text.PositionAt(place.Span.Start), text.PositionAt(place.Span.End)) : default;

    /// <summary>
    /// The part that is about some files: all findings in them, the errors in the files that these use, and what is about no source.
    /// </summary>
    public LibraryReport About(Predicate<string> isAbout) => this with
    {
        Findings = [.. Findings.Where(reported => IsAbout(reported, isAbout))],
        Silenced = [.. Silenced.Where(reported => IsAbout(reported, isAbout))],
        Suppressions = [.. Suppressions.Where(suppression => isAbout(suppression.Path))],
        Procedures = [.. Procedures.Where(procedure => isAbout(procedure.Procedure.Declared.Path))],
        Left = [.. Left.Where(procedure => isAbout(procedure.Declared.Path))],
    };

    /// <summary>The pictures of a plan whose files have an error that nothing silences: a pack with them would not show what somebody has to see.</summary>
    public ImmutableArray<string> PicturesInError(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var lacking = plan.Strip.Append(plan.Work).Concat(plan.Refit).SelectMany(stage => stage.Steps).SelectMany(step => step.Figures)
            .Where(figure => figure.Type.Length == 0).Select(figure => figure.File).ToHashSet(StringComparer.Ordinal);
        var errors = lacking.Count == 0 ? [] : Findings.Where(reported => reported.Severity == Severity.Error).Select(reported => reported.Finding.Primary).ToHashSet();
        return [.. Library.Figures.Where(figure => lacking.Contains(figure.Path) && errors.Contains(figure.Declared)).Select(figure => figure.Path).Distinct()];
    }

    private bool IsAbout(ReportedFinding reported, Predicate<string> isAbout) =>
        reported.Severity == Severity.Error || isAbout(reported.Finding.Primary.Path) || OtherTexts.ContainsKey(reported.Finding.Primary.Path);
}

/// <summary>A finding with the severity that the driver gave it.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Severity">Its severity.</param>
public sealed record ReportedFinding(Finding Finding, Severity Severity)
{
    /// <summary>What it is known by from one state of the library to the next.</summary>
    public Fingerprint Fingerprint { get; init; }

    /// <summary>By what it is silenced; null where by nothing.</summary>
    public Silencing? Silencing { get; init; }
}

/// <summary>What came of one procedure in one variant.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="IsProven">Whether strip and refit are proven.</param>
/// <param name="Outcome">The strip and the refit themselves.</param>
/// <param name="Library">The library it belongs to.</param>
public sealed record ProcedureReport(Procedure Procedure, bool IsProven, ProcedureOutcome Outcome, Library Library)
{
    /// <summary>The names of the options that its variant has.</summary>
    public ImmutableArray<string> Options => [.. Procedure.Machine.With.Select(option => option.Name)];

    /// <summary>The same for the same procedure of the same file, with the same arguments and options, in another check.</summary>
    internal string Key => $"{Procedure.Declared.Path}\n{Procedure.Job}\n{string.Join(' ', Options)}";

    /// <summary>Makes the plan, anew each time; null where the procedure is not proven, or where the check let its runs go.</summary>
    public Plan? CreatePlan() =>
        this is { IsProven: true, Outcome: { Strip: { } strip, Refit: { } refit } } ? PlanBuilder.Build(Library, strip, refit, Outcome.OwnSettings) : null;

    /// <summary>Says who does what when, anew each time; null where there is no plan.</summary>
    /// <param name="size">How many people there are.</param>
    /// <param name="scheduler">Who schedules.</param>
    public CrewPlan? CreateCrewPlan(CrewSize size, ICrewScheduler scheduler) => CreatePlan() is { } plan && Outcome is { Strip: { } strip, Refit: { } refit }
        ? CrewPlans.Of(plan, PlanBuilder.Steps(Library, strip, refit, Outcome.OwnSettings), (strip, refit), size, scheduler)
        : null;
}
