using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Makes the machine of one variant from its outline.</summary>
internal sealed class MachineElaborator
{
    private readonly MachineOutline _outline;
    private readonly SymbolLookup _lookup;
    private readonly ulong _variant;
    private readonly FindingSink _sink = new();
    private readonly MachineItem?[] _made;
    private readonly Dictionary<string, MachineItem> _items;
    private readonly Dictionary<string, Workplace> _places = new(StringComparer.Ordinal);
    private readonly ImmutableArray<Part>.Builder _parts = ImmutableArray.CreateBuilder<Part>();
    private readonly ImmutableArray<Joint>.Builder _joints = ImmutableArray.CreateBuilder<Joint>();
    private readonly ImmutableArray<Energy>.Builder _energies = ImmutableArray.CreateBuilder<Energy>();
    private readonly ImmutableArray<Fluid>.Builder _fluids = ImmutableArray.CreateBuilder<Fluid>();
    private readonly ImmutableArray<Control>.Builder _controls = ImmutableArray.CreateBuilder<Control>();

    private MachineElaborator(MachineOutline outline, SymbolLookup lookup, ulong variant)
    {
        _outline = outline;
        _lookup = lookup;
        _variant = variant;
        _made = new MachineItem?[outline.Items.Count];
        _items = new Dictionary<string, MachineItem>(outline.Items.Count, StringComparer.Ordinal);
    }

    /// <summary>The machine with these options on.</summary>
    public static BoundMachine Elaborate(MachineOutline outline, SymbolLookup lookup, ulong variant) =>
        new MachineElaborator(outline, lookup, variant).Elaborate();

    private BoundMachine Elaborate()
    {
        for (var index = 0; index < _outline.Items.Count; index++)
        {
            if (_outline.Items[index].Place.Guards.Hold(_variant))
            {
                Make(index);
            }
        }

        LinkParts();
        BindProperties();
        TemporaryJoints.Mark(_parts, _joints);
        var machine = new Machine
        {
            Name = _outline.Symbol.Name,
            Title = _outline.Title,
            Declared = _outline.Symbol.Declared,
            Options = _outline.Options,
            With = [.. _outline.Options.Where((_, index) => (_variant >> index & 1) != 0)],
            Parts = _parts.ToImmutable(),
            Joints = _joints.ToImmutable(),
            Energies = _energies.ToImmutable(),
            Fluids = _fluids.ToImmutable(),
            Controls = _controls.ToImmutable(),
            Places = [.. _places.Values],
            Items = _items,
        };
        MachineChecks.Run(machine, _sink);
        var bound = new BoundMachine(_outline, _variant, machine, _sink, _outline.Symbol.Trouble);
        machine.HasErrors = bound.HasErrors;
        return bound;
    }

    private void Make(int index)
    {
        var outline = _outline.Items[index];
        if (outline.Sort == OutlineSort.Place)
        {
            Make(outline);
            return;
        }

        MachineItem? item = outline.Sort switch
        {
            OutlineSort.Part => Add(_parts, PartOf(outline)),
            OutlineSort.Energy => Add(_energies, EnergyOf(outline)),
            OutlineSort.Fluid => Add(_fluids, FluidOf(outline)),
            OutlineSort.Control => Add(_controls, ControlOf(outline)),
            _ when JointOf(outline) is { } joint => Add(_joints, joint),
            _ => null,
        };
        _made[index] = item;
        if (item is null || item.Name.Length == 0)
        {
            return;
        }

        if (DeclaredBefore(item.Name) is { } before)
        {
            ReportTwice(outline, ItemWords.Sort(item), before);
        }
        else
        {
            _items.Add(item.Name, item);
        }
    }

    private void Make(OutlineItem place)
    {
        if (place.Name.Length == 0)
        {
            return;
        }

        if (DeclaredBefore(place.Name) is { } before)
        {
            ReportTwice(place, ItemWords.Place, before);
        }
        else
        {
            // Without a count, which is a finding, there is room for all.
            _places.Add(place.Name, new Workplace(place.Name, place.Title, place.Declared, place.Count == 0 ? int.MaxValue : place.Count));
        }
    }

    private SourceSpan? DeclaredBefore(string name) =>
        _items.TryGetValue(name, out var item) ? item.Declared : _places.TryGetValue(name, out var place) ? place.Declared : null;

    private void ReportTwice(OutlineItem outline, string sort, SourceSpan before) =>
        _sink.Report(DeclaredTwice.Item(outline.Name, sort, outline.Reference, outline.Place, before), outline.Place.Guards);

    private static TItem Add<TItem>(ImmutableArray<TItem>.Builder items, TItem item)
    {
        items.Add(item);
        return item;
    }

    private Energy EnergyOf(OutlineItem outline) => new()
    {
        Name = outline.Name,
        Title = outline.Title,
        Declared = outline.Declared,
        Block = outline.Block,
        Index = _energies.Count,
    };

    private Fluid FluidOf(OutlineItem outline) => new()
    {
        Name = outline.Name,
        Title = outline.Title,
        Declared = outline.Declared,
        Block = outline.Block,
        Index = _fluids.Count,
    };

    private Control ControlOf(OutlineItem outline) => new()
    {
        Name = outline.Name,
        Title = outline.Title,
        Declared = outline.Declared,
        Index = _controls.Count,
        Positions = outline.Positions,
        PositionTitles = outline.PositionTitles,
    };

    private Part PartOf(OutlineItem outline) => new()
    {
        Name = outline.Name,
        Title = outline.Title,
        Declared = outline.Declared,
        Block = outline.Block,
        Index = _parts.Count,
        Parent = outline.Parent < 0 ? null : (Part?)_made[outline.Parent],
    };

    /// <summary>The joint, or null where it stands outside of a part, which is reported.</summary>
    private Joint? JointOf(OutlineItem outline)
    {
        if (outline.Parent < 0 || _made[outline.Parent] is not Part owner || (outline.Sort == OutlineSort.Cover && outline.Over < 0))
        {
            return null;
        }

        return new Joint
        {
            Name = outline.Name,
            Title = outline.Title,
            Declared = outline.Declared,
            Index = _joints.Count,
            Role = outline.Role,
            Count = outline.Count,
            Kind = outline.Kind!,
            Owner = owner,
            Other = outline.Role == JointRole.Cover ? null : owner.Parent,
            Over = outline.Over < 0 ? null : (Joint?)_made[outline.Over],
            Torque = outline.Kind!.Torque,
            Pattern = outline.Kind.Pattern,
            IsOnNone = outline.Kind.IsOnNone,
            CarriesNone = outline.Kind.CarriesNone,
            ThreadLocker = outline.Kind.ThreadLocker,
            Oiled = outline.Kind.Oiled,
            Cap = outline.Kind.Cap,
            IsLock = outline.IsLock,
            Stretch = outline.Kind.Stretch,
            Reuse = outline.Kind.Reuse,
            Prevailing = outline.Kind.Prevailing,
            KeepInOrder = outline.Kind.KeepInOrder,
            Hazards = outline.Kind.Hazards,
            Certificates = outline.Kind.Certificates,
            Release = outline.Kind.Release,
            Engage = outline.Kind.Engage,
        };
    }

    private void LinkParts()
    {
        var children = Grouped(_parts, _parts.Count, part => part.Parent?.Index);
        var joints = Grouped(_joints, _parts.Count, joint => joint.Owner.Index);
        var covers = Grouped(_joints, _joints.Count, joint => joint.Over?.Index);
        for (var index = 0; index < _parts.Count; index++)
        {
            _parts[index].Children = children[index];
            _parts[index].Joints = joints[index];
        }

        for (var index = 0; index < _joints.Count; index++)
        {
            _joints[index].Covers = covers[index];
        }
    }

    /// <summary>The items of each group in their order: counted first, so that no group grows while it is filled.</summary>
    private static ImmutableArray<TItem>[] Grouped<TItem>(IReadOnlyList<TItem> items, int groups, Func<TItem, int?> groupOf)
    {
        var counts = new int[groups];
        foreach (var item in items)
        {
            if (groupOf(item) is { } group)
            {
                counts[group]++;
            }
        }

        TItem[][] filled = [.. counts.Select(count => count == 0 ? [] : new TItem[count])];
        foreach (var item in items)
        {
            if (groupOf(item) is { } group)
            {
                filled[group][^counts[group]--] = item;
            }
        }

        return [.. filled.Select(ImmutableCollectionsMarshal.AsImmutableArray)];
    }

    private void BindProperties()
    {
        var items = new ItemLookup(_outline, _items, _places, _variant, _sink);
        var binder = new ItemBinder(_outline.Symbol, _lookup, items, _sink);
        // Joints first: a way aside asks where their ends are.
        for (var index = 0; index < _made.Length; index++)
        {
            if (_made[index] is Joint joint)
            {
                binder.Bind(joint, _outline.Items[index], _variant);
            }
        }

        for (var index = 0; index < _made.Length; index++)
        {
            if (_made[index] is { } item and not Joint)
            {
                binder.Bind(item, _outline.Items[index], _variant);
            }
        }
    }
}
