using System.Collections.Immutable;
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
    public static Quantity? Of(Verb verb, MachineItem? target, ActionOrigin origin) => Puts(verb, target) ? Of(verb, target, StepOrigin.Details(origin)) : null;

    /// <summary>The same, by what is said of the action; null where nothing cures.</summary>
    public static Quantity? Of(Verb verb, MachineItem? target, ActionDetails details) => verb switch
    {
        Verb.Fasten or Verb.Snug or Verb.Engage or Verb.Plug or Verb.Connect or Verb.Renew when target is Joint joint =>
            Longest(joint.Kind.Cure, joint.Kind.Uses, joint.Uses, details.Uses),
        Verb.Fit => Longest(null, target!.Uses, details.Uses),
        Verb.Tighten => Longest(null, details.Uses),
        _ => null,
    };

    /// <summary>Whether an action puts something in place; most do not, and what is said of them need not be looked up.</summary>
    private static bool Puts(Verb verb, MachineItem? target) => verb is Verb.Fit or Verb.Tighten || target is Joint;

    private static Quantity? Longest(Quantity? longest, params ReadOnlySpan<ImmutableArray<SupplyUse>> sources)
    {
        foreach (var uses in sources)
        {
            foreach (var use in uses)
            {
                if (use.Supply.Cure is { } cure && (longest is null || cure.BaseValue > longest.BaseValue))
                {
                    longest = cure;
                }
            }
        }

        return longest;
    }
}
