using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Necessity;

/// <summary>
/// An energy that a procedure isolates while nothing that it or one of its callers does needs that, in any variant. Hardly ever is the
/// isolation too much; most often the machine does not say what is on the energy.
/// </summary>
/// <param name="Energy">The energy.</param>
/// <param name="Line">The step, or the call that brings it in.</param>
/// <param name="IsCalled">Whether it is a call.</param>
/// <param name="Unbound">Joints that the procedure opens and that could be on the energy, by their sort, and are on none.</param>
internal sealed record IdleIsolation(Energy Energy, SourceSpan Line, bool IsCalled, ImmutableArray<Joint> Unbound)
{
    /// <summary>Those of a family, in the order of the work. Empty where a variant is not proven, for then nobody can say what is needed.</summary>
    public static ImmutableArray<IdleIsolation> Of(ProcedureFamily family)
    {
        if (!family.Own.All(member => member.Outcome.IsProven))
        {
            return [];
        }

        List<PerformedAction> isolating = [.. family.Own.SelectMany(member => Isolating(member.Outcome.Strip!.Actions))];
        if (isolating.Count == 0)
        {
            return [];
        }

        var needed = new HashSet<string>(StringComparer.Ordinal);
        foreach (var member in family.All)
        {
            AddNeeded(member.Outcome, needed);
        }

        var lines = isolating.GroupBy(action => LineOf(((WrittenStep)action.Origin).Step));
        return
        [
            .. from line in lines
               let energies = line.Select(action => (Energy)action.Target!).DistinctBy(energy => energy.Name).ToList()
               let isCalled = !((WrittenStep)line.First().Origin).Step.Calls.IsEmpty
               // A shared way to make safe is not idle because one of the energies is of no account in this job.
               where !isCalled || !energies.Exists(energy => needed.Contains(energy.Name))
               from energy in energies
               where !needed.Contains(energy.Name)
               select new IdleIsolation(energy, line.Key, isCalled, [.. Unbinding(family, energy)]),
        ];
    }

    private static IEnumerable<PerformedAction> Isolating(ImmutableArray<PerformedAction> actions) =>
        actions.Where(action => action is { Verb: Verb.Isolate, Origin: WrittenStep });

    /// <summary>Adds the names of the energies whose isolation something needs, or a goal asks for.</summary>
    private static void AddNeeded(ProcedureOutcome outcome, HashSet<string> names)
    {
        AddNeeded(outcome.Strip!.Actions, names);
        AddNeeded(outcome.Refit!.Actions, names);
        foreach (var goal in outcome.Procedure.Goals)
        {
            if (goal.Verb == Verb.Isolate)
            {
                names.Add(goal.Target.Name);
            }
        }
    }

    private static void AddNeeded(ImmutableArray<PerformedAction> actions, HashSet<string> names)
    {
        foreach (var action in actions)
        {
            foreach (var met in action.Needs)
            {
                if (met.Need is EnergyIsolated or EnergyProvedDead && met.Need.Item != action.Target)
                {
                    names.Add(met.Need.Item.Name);
                }
            }
        }
    }

    private static SourceSpan LineOf(Step step) => step.Calls.IsEmpty ? step.Source : step.Calls[0];

    /// <summary>Lines may hold what is under pressure, connectors all else.</summary>
    private static IEnumerable<Joint> Unbinding(ProcedureFamily family, Energy energy)
    {
        var role = energy.Has(Hazard.Pressure) ? JointRole.Piped : JointRole.Wired;
        return family.Own
            .SelectMany(member => member.Outcome.Strip!.Actions)
            .Select(action => action.Target)
            .OfType<Joint>()
            .Where(joint => joint.Role == role && joint.On is null)
            .DistinctBy(joint => joint.Name);
    }
}
