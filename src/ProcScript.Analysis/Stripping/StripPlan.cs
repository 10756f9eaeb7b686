using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Stripping;

/// <summary>What a <c>strip</c> expands to.</summary>
/// <param name="Actions">The actions in order; the last takes the part out.</param>
/// <param name="Obstacle">Why there is no way; null where there is one.</param>
internal sealed record StripPlan(ImmutableArray<PlannedAction> Actions, StripObstacle? Obstacle);

/// <summary>An action of an expansion.</summary>
/// <param name="Request">The action.</param>
/// <param name="For">The need it meets; null for taking out the part itself.</param>
/// <param name="Of">The action that has the need.</param>
internal sealed record PlannedAction(ActionRequest Request, Need? For, NamedAction? Of);

/// <summary>Why a <c>strip</c> finds no way.</summary>
/// <param name="Lacking">What could not be had; null where needs contradict each other.</param>
/// <param name="Of">The action that needs it.</param>
internal sealed record StripObstacle(Need? Lacking, NamedAction Of);
