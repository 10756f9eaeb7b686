using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Crews;

/// <summary>What somebody must hold for a step.</summary>
internal static class CertifiedWork
{
    /// <summary>
    /// The certificates that its own words and those of all that it touches name; and null, for what most countries ask for without a name here, where it
    /// touches what is marked as restraint, high voltage or refrigerant and names none.
    /// </summary>
    public static IEnumerable<Certificate?> Of(PlannedStep step) => step.Details.Certificates.Concat(Touched(step).SelectMany(Of)).Distinct();

    /// <summary>The named ones alone.</summary>
    public static IEnumerable<Certificate> NamedAt(PlannedStep step) => Of(step).OfType<Certificate>();

    private static IEnumerable<Certificate?> Of(MachineItem item) => item.Certificates is { IsEmpty: false } named ? named : IsMarked(item) ? (Certificate?[])[null] : [];

    private static IEnumerable<MachineItem> Touched(PlannedStep step) => (step.Target is Joint joint
        ? [joint, joint.Over, joint.Owner, joint.Other, joint.On, joint.Carries]
        : (IEnumerable<MachineItem?>)[step.Target]).OfType<MachineItem>();

    private static bool IsMarked(MachineItem item) => item.Hazards.Any(hazard => hazard is Hazard.Restraint or Hazard.HighVoltage or Hazard.Refrigerant);
}
