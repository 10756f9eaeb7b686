using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>
/// What must be whole before an energy comes back: every joint on it, everything that asks for it isolated, and whatever hides or guards
/// these. "Components operationally intact" comes first in the order of return to service of 29 CFR 1910.147 (e).
/// </summary>
internal static class PowerNeeds
{
    /// <summary>Every joint on the energy, and every joint and part that needs it isolated, is whole; what it drives is in.</summary>
    public static void AllOnItClosed(ActionRequest request, NeedCollector collector)
    {
        var energy = (Energy)request.Target!;
        var exposed = collector.Facts.Guards.ExposedBy(energy);
        foreach (var fluid in Guards.DrivenBy(energy, exposed))
        {
            collector.Add(new FluidFull(fluid));
        }

        foreach (var item in exposed)
        {
            if (request.Open.Contains(item))
            {
                continue;
            }

            Whole(item, request, collector);
        }
    }

    /// <summary>What hides or guards any of it is in place again, but for a test, which is there to do without.</summary>
    public static void AllThatGuardsItInPlace(ActionRequest request, NeedCollector collector)
    {
        if (request.IsForTest)
        {
            return;
        }

        foreach (var guard in collector.Facts.Guards.Of((Energy)request.Target!, request.Open))
        {
            Whole(guard, request, collector);
        }
    }

    private static void Whole(MachineItem item, ActionRequest request, NeedCollector collector)
    {
        switch (item)
        {
            case Joint joint:
                JointSources.Whole(joint, collector);
                break;
            case Part part:
                InPlace(part, request, collector);
                break;
        }
    }

    private static void InPlace(Part part, ActionRequest request, NeedCollector collector)
    {
        if (collector.IsDiscarded(part))
        {
            return;
        }

        if (part.IsTemporary)
        {
            collector.Add(new PartOut(part));
            return;
        }

        collector.Add(new PartFitted(part));
        foreach (var joint in collector.Facts.Ties(part))
        {
            // An eye or a strap on a guard takes nothing from it.
            if (joint is { Role: JointRole.Held, IsTemporary: false } && !request.Open.Contains(joint))
            {
                JointSources.Whole(joint, collector);
            }
        }
    }
}
