using System.Collections.Immutable;
using ProcScript.Analysis.States;
using ProcScript.Jobs.Journals;

namespace ProcScript.Jobs.Replays;

/// <summary>A step that is done.</summary>
/// <param name="Event">The event that tells of it; null where the course was taken up with the step done.</param>
/// <param name="Changes">What it changed.</param>
public sealed record DoneStep(JobEvent? Event, ImmutableArray<StateChange> Changes);

/// <summary>Something that happened otherwise than planned.</summary>
/// <param name="Event">The event.</param>
/// <param name="Text">What happened.</param>
/// <param name="Means">What that means: what was not as it has to be, what is unsafe or hidden since.</param>
public sealed record Deviation(JobEvent Event, string Text, ImmutableArray<string> Means);
