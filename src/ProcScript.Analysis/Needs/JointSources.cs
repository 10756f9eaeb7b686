using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Needs;

/// <summary>What the rows of the action table ask of joints.</summary>
internal static class JointSources
{
    /// <summary>The covers over it are off.</summary>
    public static void Uncovered(ActionRequest request, NeedCollector collector)
    {
        foreach (var cover in request.Joint.Covers)
        {
            collector.Add(new CoverOff(cover));
        }
    }

    /// <summary>Its energy is isolated.</summary>
    public static void Powerless(ActionRequest request, NeedCollector collector)
    {
        if (request.Joint.On is { } energy)
        {
            AddInTheMachine(request.Joint, new EnergyIsolated(energy), collector);
            if (energy.VerifyAt is not null)
            {
                AddInTheMachine(request.Joint, new EnergyProvedDead(energy), collector);
            }
        }
    }

    /// <summary>Its fluid is out.</summary>
    public static void Drained(ActionRequest request, NeedCollector collector)
    {
        if (request.Joint.Carries is { } fluid)
        {
            AddInTheMachine(request.Joint, new FluidEmpty(fluid), collector);
        }
    }

    /// <summary>As many as the action wants are attached; one at least.</summary>
    public static void Attached(ActionRequest request, NeedCollector collector) =>
        collector.Add(new JointAttached(request.Joint, Math.Max(1, request.Value)));

    /// <summary>As many as the action wants are missing; one at least.</summary>
    public static void Missing(ActionRequest request, NeedCollector collector) =>
        collector.Add(new JointMissing(request.Joint, Math.Max(1, request.Value)));

    /// <summary>What is attached is tight.</summary>
    public static void Tight(ActionRequest request, NeedCollector collector) => collector.Add(new JointTight(request.Joint));

    /// <summary>What is attached is slack.</summary>
    public static void Slack(ActionRequest request, NeedCollector collector) => collector.Add(new JointSlack(request.Joint));

    /// <summary>Both ends are in the machine, or on the bench together.</summary>
    public static void EndsMeet(ActionRequest request, NeedCollector collector)
    {
        foreach (var part in collector.Facts.Ends(request.Joint))
        {
            collector.Add(new PartInPlace(part));
        }
    }

    /// <summary>A cover goes on over a joint that is complete and tight.</summary>
    public static void OverAWholeJoint(ActionRequest request, NeedCollector collector)
    {
        if (request.Joint.Over is { } hidden && !collector.IsDiscarded(hidden))
        {
            collector.Add(new JointComplete(hidden));
            collector.Add(new JointTight(hidden));
        }
    }

    /// <summary>What gets its torque once more has it already.</summary>
    public static void TightAlready(ActionRequest request, NeedCollector collector) => Whole(request.Joint, collector);

    /// <summary>A joint is complete and tight, unless it does not go back; one of a temporary part is off.</summary>
    public static void Whole(Joint joint, NeedCollector collector)
    {
        if (joint.IsTemporary)
        {
            collector.Add(new JointOff(joint));
        }
        else if (!collector.IsGone(joint))
        {
            collector.Add(new JointComplete(joint));
            collector.Add(new JointTight(joint));
        }
    }

    /// <summary>A need that binds while an end of the joint is in the machine.</summary>
    private static void AddInTheMachine(Joint joint, Need need, NeedCollector collector)
    {
        var root = Assemblies.RootOf(joint.Owner, collector.State);
        if (root is null
            || joint.Other is null
            || Assemblies.RootOf(joint.Other, collector.State) is null
            || (collector.AsInTheMachine && collector.IsMet(need)))
        {
            collector.Add(need);
        }
        else
        {
            collector.AddOnce(new PartOnBench(root));
        }
    }
}
