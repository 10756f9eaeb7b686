using System.Collections.Immutable;
using ProcScript.Analysis.Mending;
using ProcScript.Syntax.Text;

namespace ProcScript.Jobs.Learning;

/// <summary>What several jobs tell of one place in the library.</summary>
/// <param name="Sort">What it is about.</param>
/// <param name="At">The place.</param>
/// <param name="About">What stands there, in words.</param>
/// <param name="Written">What is said of it now, in words.</param>
/// <param name="Observed">What the jobs tell, in words, with counts.</param>
/// <param name="Jobs">The jobs, by their names.</param>
internal sealed record Lesson(LessonSort Sort, SourceSpan At, string About, string Written, string Observed, ImmutableArray<string> Jobs)
{
    /// <summary>What would say it; null where no property can.</summary>
    public PropertyChange? Change { get; init; }

    /// <summary>What to do where no property can say it; else empty.</summary>
    public string Otherwise { get; init; } = "";

    /// <summary>Of a time, the spread in seconds; else null.</summary>
    public Spread? Spread { get; init; }

    /// <summary>Such as <c>1 job</c> or <c>3 jobs</c>.</summary>
    public static string CountOf(int jobs) => jobs == 1 ? "1 job" : $"{jobs} jobs";
}
