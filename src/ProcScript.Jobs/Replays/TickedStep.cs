using ProcScript.Analysis.Following;
using ProcScript.Jobs.Journals;

namespace ProcScript.Jobs.Replays;

/// <summary>A step that was done, as a step of the cards that were followed then.</summary>
/// <param name="Event">The event that says so.</param>
/// <param name="Step">The step.</param>
/// <param name="Plan">The revision of those cards.</param>
public sealed record TickedStep(JobEvent Event, CourseStep Step, string Plan);
