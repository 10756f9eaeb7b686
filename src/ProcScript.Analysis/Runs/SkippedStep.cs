using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs;

/// <summary>A step that was left out, for it is written <c>where needed</c> and was done already.</summary>
/// <param name="Step">The step.</param>
/// <param name="Stage">The index of its stage; -1 for the work.</param>
/// <param name="Before">The number that the next action has.</param>
/// <param name="DoneBy">The number of the action that has done it; -1 where the machine comes in so.</param>
public sealed record SkippedStep(Step Step, int Stage, int Before, int DoneBy);
