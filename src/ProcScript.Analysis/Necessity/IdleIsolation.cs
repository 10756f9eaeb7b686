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

        var needed = family.All.SelectMany(member => Needed(member.Outcome)).ToHashSet(StringComparer.Ordinal);
        var lines = family.Own
            .SelectMany(member => member.Outcome.Strip!.Actions)
            .Where(action => action is { Verb: Verb.Isolate, Origin: WrittenStep })
            .GroupBy(action => LineOf(((WrittenStep)action.Origin).Step));
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

    /// <summary>The names of the energies whose isolation something needs, or a goal asks for.</summary>
    private static IEnumerable<string> Needed(ProcedureOutcome outcome) => outcome.Strip!.Actions
        .Concat(outcome.Refit!.Actions)
        .SelectMany(action => action.Needs.Select(met => met.Need).Where(need => need is (EnergyIsolated or EnergyProvedDead) && need.Item != action.Target))
        .Select(need => need.Item.Name)
        .Concat(outcome.Procedure.Goals.Where(goal => goal.Verb == Verb.Isolate).Select(goal => goal.Target.Name));

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
