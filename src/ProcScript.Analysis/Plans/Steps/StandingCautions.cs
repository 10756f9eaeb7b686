using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// What whoever comes to a machine that stands open must know: the grave alerts and the hazards of what is isolated, propped, out and open,
/// each with the name of what it is about, for no step stands beside it here.
/// </summary>
internal static class StandingCautions
{
    /// <summary>The cautions, the worst first.</summary>
    public static ImmutableArray<PlanAlert> Of(Machine machine, MachineStanding standing, Wordbook book)
    {
        MachineItem[] isolated = [.. machine.Energies.Where(energy => (EnergyState)standing.Value(StateKind.Live, energy) != EnergyState.Live)];
        MachineItem[] items = [.. isolated, .. standing.PartsPropped, .. standing.FluidsOut, .. standing.PartsOff, .. standing.JointsOpen];
        var told = new CardTold();
        var alerts = new List<Alert>();
        var usual = new List<(UsualCaution Caution, MachineItem Item)>();
        foreach (var item in items.Distinct())
        {
            alerts.AddRange(item.Alerts.Where(alert => alert.Word.IsOfSeriousInjury() && told.Add(alert, item)));
        }

        foreach (var (item, hazard) in items.Distinct().SelectMany(Hazards))
        {
            // Nothing comes back here: what burns or is under pressure may still be where somebody opens it next.
            var caution = hazard is Hazard.HotSurface or Hazard.Pressure or Hazard.Scald ? UsualCautions.ForLettingGo(hazard, item) : UsualCautions.ForPuttingBack(hazard, item);
            if (told.Add(caution, hazard, item))
            {
                usual.Add((caution, item));
            }
        }

        return AlertWords.Of(alerts, usual, book);

        // What is propped can fall, marked or not.
        IEnumerable<(MachineItem Item, Hazard Hazard)> Hazards(MachineItem item) =>
            (standing.PartsPropped.Contains(item) ? item.Hazards.Append(Hazard.SuspendedLoad).Distinct() : item.Hazards).Select(hazard => (item, hazard));
    }
}
