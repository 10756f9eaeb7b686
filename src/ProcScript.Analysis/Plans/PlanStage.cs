using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>A card: a stage of the strip or of the refit, or the work.</summary>
/// <param name="Title">The title.</param>
/// <param name="Steps">Its steps.</param>
/// <param name="Seconds">Its time for one person.</param>
public sealed record PlanStage(string Title, ImmutableArray<PlanStep> Steps, double Seconds);
