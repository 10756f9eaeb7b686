using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Actions;

/// <summary>The sorts of things that actions are done to.</summary>
[Flags]
public enum ActionTargets
{
    /// <summary>Nothing of the machine: a text says what.</summary>
    None = 0,

    /// <summary>A joint of fasteners.</summary>
    Fastener = 1,

    /// <summary>A joint of clips.</summary>
    Clip = 2,

    /// <summary>A joint of connectors.</summary>
    Connector = 4,

    /// <summary>A joint of lines.</summary>
    Line = 8,

    /// <summary>A bonded joint.</summary>
    Bond = 16,

    /// <summary>A cover over a joint.</summary>
    Cover = 32,

    /// <summary>A part.</summary>
    Part = 64,

    /// <summary>A control.</summary>
    Control = 128,

    /// <summary>An energy.</summary>
    Energy = 256,

    /// <summary>A fluid.</summary>
    Fluid = 512,

    /// <summary>Any joint or cover.</summary>
    Joint = Fastener | Clip | Connector | Line | Bond | Cover,

    /// <summary>Any item of a machine.</summary>
    Anything = Joint | Part | Control | Energy | Fluid,
}

/// <summary>Tells sorts apart.</summary>
public static class ActionTarget
{
    /// <summary>The sort of an item. A joint whose kind nothing declares is of every joint's sort: its finding is told already.</summary>
    public static ActionTargets Of(MachineItem item) => item switch
    {
        Joint { Kind.Category: KindCategory.Unknown } => ActionTargets.Joint,
        Joint { Role: JointRole.Cover, Kind.Category: not KindCategory.Bond } => ActionTargets.Cover,
        Joint joint => Of(joint.Kind.Category),
        Part => ActionTargets.Part,
        Control => ActionTargets.Control,
        Energy => ActionTargets.Energy,
        Fluid => ActionTargets.Fluid,
        _ => ActionTargets.None,
    };

    private static ActionTargets Of(KindCategory category) => category switch
    {
        KindCategory.Fastener => ActionTargets.Fastener,
        KindCategory.Clip => ActionTargets.Clip,
        KindCategory.Connector => ActionTargets.Connector,
        KindCategory.Line => ActionTargets.Line,
        _ => ActionTargets.Bond,
    };
}
