using ProcScript.Analysis.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching.Visits;

/// <summary>A step of a job that goes into a visit, spelled out.</summary>
/// <param name="Step">The step: one action, with what its author says of it.</param>
/// <param name="Goal">What it brings about; null for work, and for what is done by halves.</param>
/// <param name="Stays">Whether it is done in every visit: nothing later in its own job asks for it, so that only its author knows what it is for.</param>
internal sealed record VisitStep(Step Step, FreeingGoal? Goal, bool Stays);
