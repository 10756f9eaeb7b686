using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines;

/// <summary>What the hazard marks of a machine mean for what is tied to the marked item.</summary>
internal static class HazardMarks
{
    /// <summary>Whether an item is marked so.</summary>
    public static bool Has(this MachineItem item, Hazard hazard) => item.Hazards.Contains(hazard);

    /// <summary>Whether a joint, or a part that it ties, is marked as one of a restraint system.</summary>
    public static bool IsOfRestraint(Joint joint) =>
        joint.Has(Hazard.Restraint) || joint.Owner.Has(Hazard.Restraint) || joint.Other?.Has(Hazard.Restraint) == true;

    /// <summary>What makes an energy one that can fire a restraint: its own mark, or the first restraint joint on it; null where nothing does.</summary>
    public static MachineItem? RestraintOn(this MachineFacts facts, Energy energy) =>
        energy.Has(Hazard.Restraint) ? energy : facts.JointsOn(energy).FirstOrDefault(IsOfRestraint);
}
