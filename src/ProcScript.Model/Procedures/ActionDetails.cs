using System.Collections.Immutable;
using ProcScript.Model.Catalog;
using ProcScript.Model.Figures;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>What the block of an action says.</summary>
public sealed record ActionDetails
{
    /// <summary>Nothing said.</summary>
    public static ActionDetails None { get; } = new();

    /// <summary>How it is done; Markdown.</summary>
    public ImmutableArray<string> How { get; init; } = [];

    /// <summary>Tools beside those of the kind.</summary>
    public ImmutableArray<Tool> Tools { get; init; } = [];

    /// <summary>People needed; 0 where not said.</summary>
    public int People { get; init; }

    /// <summary>The time of the whole action.</summary>
    public Quantity? Time { get; init; }

    /// <summary>What to photograph.</summary>
    public ImmutableArray<string> Photos { get; init; } = [];

    /// <summary>The pictures that stand at it.</summary>
    public ImmutableArray<Figure> Figures { get; init; } = [];

    /// <summary>What to check once it is done; Markdown.</summary>
    public ImmutableArray<string> Checks { get; init; } = [];

    /// <summary>Where to put the part.</summary>
    public string? Store { get; init; }

    /// <summary>The torque, where it differs from the joint's.</summary>
    public TighteningTorque? Torque { get; init; }

    /// <summary>Where that torque is written.</summary>
    public SourceSpan? TorqueDeclared { get; init; }

    /// <summary>The order of tightening, where it differs from the joint's.</summary>
    public TighteningPattern? Pattern { get; init; }

    /// <summary>The author's own name for the bag that what comes off goes into.</summary>
    public string? Bag { get; init; }

    /// <summary>How the part is lifted, where it differs from what the part says.</summary>
    public LiftGeometry Lift { get; init; } = LiftGeometry.None;

    /// <summary>Whether a hoist lifts it.</summary>
    public bool Hoist { get; init; }

    /// <summary>Whether a second person signs that it is done.</summary>
    public bool Signed { get; init; }

    /// <summary>What somebody must hold to do it.</summary>
    public ImmutableArray<Certificate> Certificates { get; init; } = [];

    /// <summary>The place in which it is done; <see cref="Workplace.None"/> where it says that there is none, null where nothing is said.</summary>
    public Workplace? In { get; init; }

    /// <summary>Protective equipment.</summary>
    public ImmutableArray<string> Ppe { get; init; } = [];

    /// <summary>What it uses up.</summary>
    public ImmutableArray<SupplyUse> Uses { get; init; } = [];

    /// <summary>Alerts written in the block; they stand before the action.</summary>
    public ImmutableArray<Alert> Alerts { get; init; } = [];

    /// <summary>The same for the inverse.</summary>
    public ActionDetails? Refit { get; init; }

    /// <summary>The same, with what another block says where this one says nothing; the alerts are the other's alone.</summary>
    public ActionDetails Or(ActionDetails other) => DetailsAgreement.With(this, other);
}
