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

            switch (item)
            {
                case Joint joint:
                    Whole(joint, collector);
                    break;
                case Part part:
                    InPlace(part, request, collector);
                    break;
            }
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
            switch (guard)
            {
                case Joint cover:
                    Whole(cover, collector);
                    break;
                case Part part:
                    InPlace(part, request, collector);
                    break;
            }
        }
    }

    private static void InPlace(Part part, ActionRequest request, NeedCollector collector)
    {
        if (collector.IsDiscarded(part))
        {
            return;
        }

        collector.Add(new PartFitted(part));
        foreach (var joint in collector.Facts.Ties(part))
        {
            if (joint.Role == JointRole.Held && !request.Open.Contains(joint))
            {
                Whole(joint, collector);
            }
        }
    }

    private static void Whole(Joint joint, NeedCollector collector)
    {
        if (!collector.IsGone(joint))
        {
            collector.Add(new JointComplete(joint));
            collector.Add(new JointTight(joint));
        }
    }
}
