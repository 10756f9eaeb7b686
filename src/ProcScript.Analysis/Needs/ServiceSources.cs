using ProcScript.Analysis.Actions;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>What the rows of the action table ask of energies, fluids and controls.</summary>
internal static class ServiceSources
{
    /// <summary>The control is not yet where it is to go.</summary>
    public static void Elsewhere(ActionRequest request, NeedCollector collector) =>
        collector.Add(new ControlElsewhere((Control)request.Target!, request.Value));

    /// <summary>The energy is live.</summary>
    public static void Live(ActionRequest request, NeedCollector collector) => collector.Add(new EnergyLive((Energy)request.Target!));

    /// <summary>The energy is isolated.</summary>
    public static void Isolated(ActionRequest request, NeedCollector collector) =>
        collector.Add(new EnergyIsolated((Energy)request.Target!));

    /// <summary>The fluid is in.</summary>
    public static void Full(ActionRequest request, NeedCollector collector) => collector.Add(new FluidFull((Fluid)request.Target!));

    /// <summary>The fluid is out.</summary>
    public static void Empty(ActionRequest request, NeedCollector collector) => collector.Add(new FluidEmpty((Fluid)request.Target!));

    /// <summary>Every joint that carries the fluid is complete and tight.</summary>
    public static void AllThatCarryItClosed(ActionRequest request, NeedCollector collector)
    {
        foreach (var joint in collector.Facts.JointsCarrying((Fluid)request.Target!))
        {
            if (joint.IsTemporary)
            {
                collector.Add(new JointOff(joint));
            }
            else if (!collector.IsDiscarded(joint))
            {
                collector.Add(new JointComplete(joint));
                collector.Add(new JointTight(joint));
            }
        }
    }
}
