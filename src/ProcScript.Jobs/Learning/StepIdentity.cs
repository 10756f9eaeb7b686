using ProcScript.Analysis.Following;

namespace ProcScript.Jobs.Learning;

/// <summary>
/// What a step is known by from one text of its procedure to the next: what is done to what, in which part of the job, and, where a text has the
/// same again, which of them it is. A step that nothing is done to is known by its words.
/// </summary>
/// <param name="Phase">The part of the job.</param>
/// <param name="Verb">The verb's word.</param>
/// <param name="Item">The item's name; empty where there is none.</param>
/// <param name="Position">Of a control, the position.</param>
/// <param name="Words">The author's words of a step without an item; else empty.</param>
/// <param name="Nth">Which of those that are the same, from 1.</param>
internal sealed record StepIdentity(CoursePhase Phase, string Verb, string Item, string Position, string Words, int Nth)
{
    /// <summary>The identities of the steps of a course, by the steps' numbers.</summary>
    public static Dictionary<int, StepIdentity> Of(JobCourse course)
    {
        var seen = new Dictionary<StepIdentity, int>();
        return course.Steps.ToDictionary(step => step.Number, step =>
        {
            var line = step.Line;
            var first = new StepIdentity(step.Phase, line.Verb, line.Item, line.Position, line.Item.Length == 0 ? step.Words : "", 1);
            seen[first] = seen.GetValueOrDefault(first) + 1;
            return first with { Nth = seen[first] };
        });
    }
}
