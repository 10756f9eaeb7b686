using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Following;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Jobs.Learning;

/// <summary>The library as it is now: where in it is what jobs tell of.</summary>
/// <param name="report">What the check says of it.</param>
internal sealed class CurrentTexts(LibraryReport report)
{
    private readonly Dictionary<(string Procedure, string With), CurrentProcedure?> _procedures = [];

    /// <summary>What the catalog has, by its sort, and the files it is declared in.</summary>
    public ILookup<string, (string Path, CatalogSyntax Entry)> Catalog { get; } = report.Library.Trees.Values
        .SelectMany(tree => tree.Root.Declarations.OfType<CatalogSyntax>().Select(entry => (tree.Text.Path, Entry: entry)))
        .ToLookup(one => one.Entry.Keyword.Text, StringComparer.Ordinal);

    /// <summary>The procedure that a job followed, as it is now.</summary>
    /// <param name="job">The job.</param>
    /// <param name="whyNot">Why there is none; empty where there is.</param>
    public CurrentProcedure? Of(SeenJob job, out string whyNot)
    {
        var key = (job.Procedure, string.Join(' ', job.With.Order(StringComparer.Ordinal)));
        if (!_procedures.TryGetValue(key, out var procedure))
        {
            _procedures.Add(key, procedure = Find(job));
        }

        whyNot = procedure is not null ? ""
            : !report.Procedures.Any(one => one.Procedure.Job == job.Procedure) ? $"this library has no procedure {job.Procedure}"
            : !report.Procedures.Any(one => IsOf(one, job)) ? $"{job.Procedure} is for no machine {(job.With.IsEmpty ? "without options" : $"with {string.Join(" and ", job.With)}")} any more"
            : $"{job.Procedure} is not proven as it stands: see 'procscript check'";
        return procedure;
    }

    /// <summary>A place in words: the line and the column, from 1.</summary>
    public (int Line, int Column) PlaceOf(SourceSpan place)
    {
        var (line, column) = report.LinesOf(place).Start;
        return (line + 1, column + 1);
    }

    private CurrentProcedure? Find(SeenJob job) => report.Procedures.FirstOrDefault(one => one.IsProven && IsOf(one, job)) is { } found && JobCourse.Of(found) is { } course
        ? new CurrentProcedure(found.Procedure, course)
        : null;

    private static bool IsOf(ProcedureReport report, SeenJob job) =>
        report.Procedure.Job == job.Procedure && report.Options.ToHashSet(StringComparer.Ordinal).SetEquals(job.With);
}

/// <summary>A procedure as it is now.</summary>
internal sealed class CurrentProcedure
{
    private readonly Dictionary<StepIdentity, CourseStep> _steps;

    /// <summary>Takes a procedure and its course.</summary>
    public CurrentProcedure(Procedure procedure, JobCourse course)
    {
        Procedure = procedure;
        _steps = StepIdentity.Of(course).ToDictionary(step => step.Value, step => course.Step(step.Key)!);
    }

    /// <summary>The procedure.</summary>
    public Procedure Procedure { get; }

    /// <summary>The step of an identity; null where there is none any more.</summary>
    public CourseStep? Step(StepIdentity identity) => _steps.GetValueOrDefault(identity);

    /// <summary>The item of a name; null where the machine has none any more.</summary>
    public MachineItem? Item(string name) => Procedure.Machine.Items.GetValueOrDefault(name);
}
