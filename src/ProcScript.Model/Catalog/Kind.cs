using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Catalog;

/// <summary>A kind of joint from the catalog, with what is true of every joint of the kind.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Category">Its sort.</param>
/// <param name="Declared">Where its name stands.</param>
public sealed record Kind(string Name, string Title, KindCategory Category, SourceSpan Declared)
{
    /// <summary>The thread, as written.</summary>
    public string? Thread { get; init; }

    /// <summary>The length.</summary>
    public Quantity? Length { get; init; }

    /// <summary>The property class or grade, as written.</summary>
    public string? Grade { get; init; }

    /// <summary>The tool that fits its head.</summary>
    public Tool? Drive { get; init; }

    /// <summary>Further tools.</summary>
    public ImmutableArray<Tool> Tools { get; init; } = [];

    /// <summary>The tightening torque.</summary>
    public TighteningTorque? Torque { get; init; }

    /// <summary>The order in which those of one joint are tightened.</summary>
    public TighteningPattern? Pattern { get; init; }

    /// <summary>Whether it goes in with thread locker.</summary>
    public bool ThreadLocker { get; init; }

    /// <summary>Whether it goes in oiled.</summary>
    public bool Oiled { get; init; }

    /// <summary>The coating, as written.</summary>
    public string? Coating { get; init; }

    /// <summary>How long it cures before it may be loaded.</summary>
    public Quantity? Cure { get; init; }

    /// <summary>What every joint of the kind can do to people.</summary>
    public ImmutableArray<Hazard> Hazards { get; init; } = [];

    /// <summary>The share that breaks, for spares; a ratio.</summary>
    public Quantity? Spare { get; init; }

    /// <summary>What one joint takes anew when it is closed.</summary>
    public ImmutableArray<SupplyUse> Uses { get; init; } = [];

    /// <summary>What the openings of one are capped with while it is off; null where nothing has to.</summary>
    public CapUse? Cap { get; init; }

    /// <summary>Whether it never serves twice. Bonds never do.</summary>
    public bool SingleUse { get; init; }

    /// <summary>Why it may serve again although its sort never does; null where nothing is said.</summary>
    public string? Reuse { get; init; }

    /// <summary>The author's verbs for taking it off and putting it on; null for the usual ones.</summary>
    public VerbPair? Verbs { get; init; }

    /// <summary>Whether it is tightened until it yields, and so stretches for good.</summary>
    public bool Stretch { get; init; }

    /// <summary>The torque that it takes to run a self-locking one on before it seats.</summary>
    public Limit? Prevailing { get; init; }

    /// <summary>Whether each goes back into the place that it came from.</summary>
    public bool KeepInOrder { get; init; }

    /// <summary>Whether it stays on the part and so is never bagged.</summary>
    public bool Captive { get; init; }

    /// <summary>Whether its joints are on no energy, unless one says otherwise.</summary>
    public bool IsOnNone { get; init; }

    /// <summary>Whether its joints carry no fluid, unless one says otherwise.</summary>
    public bool CarriesNone { get; init; }

    /// <summary>How it comes off.</summary>
    public string? Release { get; init; }

    /// <summary>How it goes on.</summary>
    public string? Engage { get; init; }

    /// <summary>The time for one, either way.</summary>
    public Quantity? Time { get; init; }

    /// <summary>What somebody must hold to handle it.</summary>
    public ImmutableArray<Certificate> Certificates { get; init; } = [];

    /// <summary>Protective equipment for handling it.</summary>
    public ImmutableArray<string> Ppe { get; init; } = [];
}
