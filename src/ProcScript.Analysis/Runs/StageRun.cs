using System.Collections.Immutable;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs;

/// <summary>A stage with its actions, work actions at their place.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="Actions">The actions, in order.</param>
public sealed record StageRun(Stage Stage, ImmutableArray<PerformedAction> Actions);
