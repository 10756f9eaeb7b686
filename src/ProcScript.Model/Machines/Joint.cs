using System.Collections.Immutable;
using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Machines;

/// <summary>What ties a part to another, or a cover over such a joint.</summary>
public sealed class Joint : MachineItem
{
    /// <summary>Held, wired, piped, or a cover.</summary>
    public required JointRole Role { get; init; }

    /// <summary>How many there are.</summary>
    public required int Count { get; init; }

    /// <summary>The catalog kind.</summary>
    public required Kind Kind { get; init; }

    /// <summary>The part that declares it; of a cover, the owner of the joint it covers.</summary>
    public required Part Owner { get; init; }

    /// <summary>The other end: the part after <c>to</c>, else the owner's parent; null for the frame.</summary>
    public Part? Other { get; internal set; }

    /// <summary>Of a cover: whether it locks the joint, as a split pin does, and does not hide it.</summary>
    public bool IsLock { get; init; }

    /// <summary>Of a cover: the joint it hides or locks.</summary>
    public Joint? Over { get; init; }

    /// <summary>The covers over it.</summary>
    public ImmutableArray<Joint> Covers { get; internal set; } = [];

    /// <summary>The energy that must be isolated to open or close it.</summary>
    public Energy? On { get; internal set; }

    /// <summary>The fluid that must be out to open or close it.</summary>
    public Fluid? Carries { get; internal set; }

    /// <summary>Whether it is said that it is on no energy: by its own words or its kind's, and then <see cref="On"/> is null.</summary>
    public bool IsOnNone { get; internal set; }

    /// <summary>Whether it is said that it carries no fluid: by its own words or its kind's, and then <see cref="Carries"/> is null.</summary>
    public bool CarriesNone { get; internal set; }

    /// <summary>Where it is, in words.</summary>
    public string? At { get; internal set; }

    /// <summary>The torque: its own, else its kind's.</summary>
    public TighteningTorque? Torque { get; internal set; }

    /// <summary>Where its own torque is written; null where it has its kind's.</summary>
    public SourceSpan? TorqueDeclared { get; internal set; }

    /// <summary>The order in which its fasteners are tightened: its own, else its kind's.</summary>
    public TighteningPattern? Pattern { get; internal set; }

    /// <summary>Whether it goes in with thread locker, by its own words or its kind's.</summary>
    public bool ThreadLocker { get; internal set; }

    /// <summary>Whether it goes in oiled, by its own words or its kind's.</summary>
    public bool Oiled { get; internal set; }

    /// <summary>Whether it is tightened until it yields, by its own words or its kind's.</summary>
    public bool Stretch { get; internal set; }

    /// <summary>Whether a second person signs that it is closed.</summary>
    public bool Signed { get; internal set; }

    /// <summary>Why it may serve again although its sort never does, in its own words or its kind's; null where nothing is said.</summary>
    public string? Reuse { get; internal set; }

    /// <summary>Whether what comes off is scrap and new ones go back: so it is with bonds, and with locks and stretch bolts unless said.</summary>
    public bool SingleUse => Kind.Category == KindCategory.Bond || (Reuse is null && (Kind.SingleUse || Stretch || IsLock));

    /// <summary>The torque that it takes to run a self-locking one on before it seats, its own or its kind's.</summary>
    public Limit? Prevailing { get; internal set; }

    /// <summary>The parts and joints that disturb it: once one of them comes off, this must be renewed.</summary>
    public ImmutableArray<MachineItem> RenewWith { get; internal set; } = [];

    /// <summary>How it comes off: its own words, else its kind's.</summary>
    public string? Release { get; internal set; }

    /// <summary>How it goes on: its own words, else its kind's.</summary>
    public string? Engage { get; internal set; }
}

/// <summary>What a joint does.</summary>
public enum JointRole
{
    /// <summary>Fasteners, clips, bonds.</summary>
    Held,

    /// <summary>Connectors.</summary>
    Wired,

    /// <summary>Lines.</summary>
    Piped,

    /// <summary>Hides a joint and ties nothing.</summary>
    Cover,
}
