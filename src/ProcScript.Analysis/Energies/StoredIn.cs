using ProcScript.Analysis.Machines;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Energies;

/// <summary>What lets out what is stored in a part or a joint: the energies that are isolated for it, and whether a fluid is drained for it.</summary>
/// <param name="Energies">The energies, those of electricity left out: they let out neither pressure nor a spring.</param>
/// <param name="IsDrained">Whether a fluid has to be out.</param>
internal sealed record StoredIn(IReadOnlyCollection<Energy> Energies, bool IsDrained)
{
    /// <summary>What lets out what is stored in a part: what is asked for its own joints and for it.</summary>
    public static StoredIn Of(MachineFacts facts, Part part) =>
        Of([.. facts.Ties(part).Concat(part.Joints).Distinct().SelectMany(Needed), .. Around(part)]);

    /// <summary>What lets out what is stored behind a joint.</summary>
    public static StoredIn Of(Joint joint) => Of([.. Needed(joint), .. Around(joint.Owner)]);

    private static StoredIn Of(IReadOnlyCollection<MachineItem> needed) => new(
        [.. needed.OfType<Energy>().Where(energy => !IsElectrical(energy)).Distinct()],
        needed.OfType<Fluid>().Any());

    private static IEnumerable<MachineItem> Needed(Joint joint) => [.. Present(joint.On), .. Present(joint.Carries), .. Of(joint.Conditions)];

    /// <summary>What is asked for a part and those around it.</summary>
    private static IEnumerable<MachineItem> Around(Part part)
    {
        for (var at = part; at is not null; at = at.Parent)
        {
            foreach (var item in Of(at.Conditions))
            {
                yield return item;
            }
        }
    }

    private static IEnumerable<MachineItem> Of(IEnumerable<Condition> conditions) =>
        conditions.Where(condition => condition.State is NeededState.Isolated or NeededState.Empty).Select(condition => condition.Item);

    private static IEnumerable<MachineItem> Present(MachineItem? item) => item is null ? [] : [item];

    private static bool IsElectrical(Energy energy) =>
        energy.VerifyExpect is { Quantity.Unit.Dimension: Dimension.Voltage or Dimension.Current }
        || energy.Has(Hazard.HighVoltage)
        || EnergyWords.IsElectrical(energy);
}
