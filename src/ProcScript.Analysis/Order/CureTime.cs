using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Order;

/// <summary>How long what an action puts in place cures before it may be loaded: the longest of its kind's time and its supplies'.</summary>
internal static class CureTime
{
    /// <summary>The time; null where nothing cures.</summary>
    public static Quantity? Of(Verb verb, MachineItem? target, ActionOrigin origin) => verb switch
    {
        Verb.Fasten or Verb.Engage or Verb.Plug or Verb.Connect or Verb.Renew when target is Joint joint =>
            Longest([joint.Kind.Cure, .. Cures(joint.Kind.Uses), .. Cures(joint.Uses), .. Cures(StepOrigin.Details(origin).Uses)]),
        Verb.Fit => Longest([.. Cures(target!.Uses), .. Cures(StepOrigin.Details(origin).Uses)]),
        Verb.Tighten => Longest(Cures(StepOrigin.Details(origin).Uses)),
        _ => null,
    };

    private static IEnumerable<Quantity?> Cures(IEnumerable<SupplyUse> uses) => uses.Select(use => use.Supply.Cure);

    private static Quantity? Longest(IEnumerable<Quantity?> cures) => cures.OfType<Quantity>().MaxBy(cure => cure.BaseValue);
}
