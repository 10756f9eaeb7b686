using System.Collections.Immutable;
using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Saying;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines;

/// <summary>What follows from a machine alone, worked out once and read by every procedure on it.</summary>
internal sealed class MachineFacts
{
    private readonly ImmutableArray<Part>[] _ends;
    private readonly ImmutableArray<Joint>[] _ties;
    private readonly ImmutableArray<Joint>[] _jointsOn;
    private readonly ImmutableArray<Joint>[] _jointsCarrying;
    private readonly bool[] _isConditioned;
    private readonly Lazy<Touching> _touching;
    private readonly Lazy<TitleIndex> _titles;
    private readonly Lazy<SupplyNames> _supplies;

    /// <summary>Works out the facts.</summary>
    public MachineFacts(Machine machine)
    {
        Machine = machine;
        Layout = new StateLayout(machine);
        _ends = [.. machine.Joints.Select(joint => joint.Role == JointRole.Cover ? [] : Assemblies.BelowTheCommonPart(joint).ToImmutableArray())];
        _ties = FindTies(machine);
        _jointsOn = Group(machine.Joints, joint => joint.On?.Index, machine.Energies.Length);
        _jointsCarrying = Group(machine.Joints, joint => joint.Carries?.Index, machine.Fluids.Length);
        Guards = new Guards(machine);
        _isConditioned = new bool[machine.Parts.Length];
        foreach (var part in machine.Parts)
        {
            _isConditioned[part.Index] = !part.Conditions.IsEmpty || (part.Parent is { } parent && _isConditioned[parent.Index]);
        }

        HasCaps = machine.Items.Values.Any(item => item.Cap is not null);
        Temporary = [.. machine.Parts.Where(part => part.IsTemporary)];
        HasChoices = machine.Items.Values.Any(HasChoice);
        Freedom = new Freedom(this);
        _touching = new Lazy<Touching>(() => new Touching(this));
        _titles = new Lazy<TitleIndex>(() => new TitleIndex(machine));
        _supplies = new Lazy<SupplyNames>(() => new SupplyNames(machine));
    }

    /// <summary>The machine.</summary>
    public Machine Machine { get; }

    /// <summary>Whether anything on it has caps.</summary>
    public bool HasCaps { get; }

    /// <summary>What the shop has chosen for the file that declares it.</summary>
    public PathSettings Settings { get; init; } = PathSettings.BuiltIn;

    /// <summary>Where its variables lie.</summary>
    public StateLayout Layout { get; }

    /// <summary>The temporary parts, in the order of declaration.</summary>
    public ImmutableArray<Part> Temporary { get; }

    /// <summary>What a live energy can reach, and what keeps hands away from it.</summary>
    public Guards Guards { get; }

    /// <summary>What can be got off it at all.</summary>
    public Freedom Freedom { get; }

    /// <summary>Whether any condition of it can be met in more ways than one.</summary>
    public bool HasChoices { get; }

    /// <summary>Which items a step touches beside its target; worked out once somebody asks.</summary>
    public Touching Touching => _touching.Value;

    /// <summary>What people call its items; worked out once somebody asks.</summary>
    public TitleIndex Titles => _titles.Value;

    /// <summary>Its energies and fluids by the words that people call them.</summary>
    public SupplyNames Supplies => _supplies.Value;

    /// <summary>
    /// The parts of which none may be off for the ends of a joint to meet, as <see cref="Assemblies.BelowTheCommonPart"/> tells them; none for
    /// a cover.
    /// </summary>
    public ImmutableArray<Part> Ends(Joint joint) => _ends[joint.Index];

    /// <summary>The joints between a part with all inside it and the rest of the machine, in the order of declaration.</summary>
    public ImmutableArray<Joint> Ties(Part part) => _ties[part.Index];

    /// <summary>The joints that an energy must be isolated for.</summary>
    public ImmutableArray<Joint> JointsOn(Energy energy) => _jointsOn[energy.Index];

    /// <summary>The joints that a fluid must be out for.</summary>
    public ImmutableArray<Joint> JointsCarrying(Fluid fluid) => _jointsCarrying[fluid.Index];

    /// <summary>Whether a part or one that it lies in has conditions of its own.</summary>
    public bool IsConditioned(Part part) => _isConditioned[part.Index];

    /// <summary>Whether an item is a temporary part, lies in it or ties it: what asks for the part to be fitted does not bind that.</summary>
    public bool Serves(MachineItem item, Part temporary) => item switch
    {
        Part part => part.IsWithin(temporary),
        Joint { Over: { } hidden } => Serves(hidden, temporary),
        Joint joint => joint.Owner.IsWithin(temporary) || Ends(joint).Contains(temporary),
        _ => false,
    };

    private static bool HasChoice(MachineItem item) =>
        item.Conditions.Any(IsChoice)
        || (item is Part part && (part.WayOut.Any(IsChoice) || part.Aside?.Conditions.Any(IsChoice) == true))
        || (item is Energy { VerifyAt: { } place } && place.Conditions.Any(IsChoice));

    private static bool IsChoice(Condition condition) => condition.State == NeededState.AnyOf;

    private ImmutableArray<Joint>[] FindTies(Machine machine)
    {
        var ties = new List<Joint>[machine.Parts.Length];
        foreach (var joint in machine.Joints)
        {
            foreach (var part in Ends(joint))
            {
                (ties[part.Index] ??= []).Add(joint);
            }
        }

        return Array.ConvertAll(ties, list => list is null ? [] : list.ToImmutableArray());
    }

    private static ImmutableArray<Joint>[] Group(ImmutableArray<Joint> joints, Func<Joint, int?> key, int count)
    {
        var groups = new List<Joint>[count];
        foreach (var joint in joints)
        {
            if (key(joint) is { } index)
            {
                (groups[index] ??= []).Add(joint);
            }
        }

        return Array.ConvertAll(groups, list => list is null ? [] : list.ToImmutableArray());
    }
}
