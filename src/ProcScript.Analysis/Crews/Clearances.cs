using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Crews;

/// <summary>Beside which steps nobody else works.</summary>
internal static class Clearances
{
    /// <summary>Whether all others stand clear of a step, or of the steps of a test.</summary>
    public static bool StandClear(ImmutableArray<PlannedStep> steps, Func<int, PerformedAction> action) => steps.Any(step =>
        step.Test > 0
        || (step.Target is Energy && step.Verb == Verb.Restore)
        || action(step.Number).Needs.Any(met => met.Need is EnergyLive)
        || IsHoisted(step)
        || (Moves(step) && step.Target is { } item && item.Hazards.Any(CanHitOthers)));

    private static bool IsHoisted(PlannedStep step) =>
        step.Part is { } part && (part.Hoist || step.Details.Hoist) && step.Verb is Verb.Remove or Verb.Fit or Verb.Aside or Verb.Return;

    private static bool Moves(PlannedStep step) =>
        step.Opens || step.Closes || step.Verb is Verb.Loosen or Verb.Tighten or Verb.Remove or Verb.Fit or Verb.Aside or Verb.Return or Verb.Support or Verb.Unsupport;

    /// <summary>Whether it can hit who stands beside it, and not only who touches it. Common practice, no source.</summary>
    private static bool CanHitOthers(Hazard hazard) => hazard is Hazard.Restraint or Hazard.Spring or Hazard.Pressure or Hazard.SuspendedLoad or Hazard.Scald;
}
