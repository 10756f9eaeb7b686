using ProcScript.Model.Binding.Catalog;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds what stands inside an item of a machine: what every sort may say here, the rest by sort.</summary>
internal sealed class ItemBinder
{
    private readonly MachineSymbol _symbol;
    private readonly SymbolLookup _lookup;
    private readonly ItemLookup _items;
    private readonly ConditionBinder _conditions;
    private readonly FindingSink _sink;
    private readonly JointBinder _joints;
    private readonly PartBinder _parts;
    private readonly StateBinder _states;
    private readonly PropertyGate _gate;

    /// <summary>A binder for the items of one variant.</summary>
    public ItemBinder(MachineSymbol symbol, SymbolLookup lookup, ItemLookup items, FindingSink sink)
    {
        _symbol = symbol;
        _lookup = lookup;
        _items = items;
        _sink = sink;
        _conditions = new ConditionBinder(items, sink);
        _joints = new JointBinder(items, sink);
        _parts = new PartBinder(items, _conditions, sink);
        _states = new StateBinder(lookup, items, _conditions, sink);
        _gate = new PropertyGate(PropertyHolders.None, sink);
    }

    /// <summary>Binds what stands inside one item.</summary>
    public void Bind(MachineItem item, OutlineItem outline, ulong variant)
    {
        _gate.Open(HolderOf(item));
        AsideSyntax? aside = null;
        foreach (var (node, place) in outline.Members)
        {
            if (!place.Guards.Hold(variant))
            {
                continue;
            }

            if (node is AsideSyntax way && item is Part part)
            {
                _parts.Aside(part, way, ref aside, place);
            }
            else if (node is PropertySyntax property && _gate.Lets(property, place) && !Common(item, property, place))
            {
                Special(item, property, place);
            }
        }

        if (!_symbol.MayBeCutShort)
        {
            _states.CheckComplete(item, outline);
        }
    }

    private static PropertyHolders HolderOf(MachineItem item) => item switch
    {
        Part => PropertyHolders.Part,
        Joint { Role: JointRole.Cover } => PropertyHolders.Cover,
        Joint => PropertyHolders.Joint,
        Energy => PropertyHolders.Energy,
        Fluid => PropertyHolders.Fluid,
        _ => PropertyHolders.Control,
    };

    /// <summary>Binds what several sorts of items may say. False where the property is another.</summary>
    private bool Common(MachineItem item, PropertySyntax property, BindingPlace place)
    {
        switch (property)
        {
            case NeedsPropertySyntax { Keyword.Text: "needs" or "behind" } needs:
                item.Conditions = item.Conditions.AddRange(_conditions.Needs(needs, place, item));
                return true;
            case NamesPropertySyntax { Keyword.Text: "tool" } tools:
                item.Tools = item.Tools.AddRange(_lookup.Tools(tools.Names, place, _sink));
                return true;
            case NamesPropertySyntax { Keyword.Text: "certified" } certified:
                item.Certificates = [.. item.Certificates.Union(_lookup.Certificates(certified.Names, place, _sink))];
                return true;
            case NamesPropertySyntax { Keyword.Text: "in" } stands:
                item.In = _items.Workplace(stands, place);
                return true;
            case TextPropertySyntax { Keyword.Text: "ppe" } ppe:
                item.Ppe = item.Ppe.Add(AuthorText.Bind(ppe.Text, place, _sink));
                return true;
            case QuantityPropertySyntax { Keyword.Text: "time" } time:
                item.Time = QuantityBinder.Bind(time.Quantity, QuantityDemand.Of("time"), place, _sink);
                return true;
            case UsesPropertySyntax uses:
                if (SupplyUses.Bind(uses, _lookup, place, _sink) is { } use)
                {
                    item.Uses = item.Uses.Add(use);
                }

                return true;
            case PiecesPropertySyntax cap:
                item.Cap = CapUses.Bind(cap, _lookup, place, _sink);
                return true;
            case FlagPropertySyntax { Keyword.Text: "keep in order" }:
                item.KeepInOrder = true;
                return true;
            case TextPropertySyntax { Keyword.Text: "mark" } mark:
                item.Marks = item.Marks.Add(AuthorText.Bind(mark.Text, place, _sink));
                return true;
            case TextPropertySyntax { Keyword.Text: "measured" } measured:
                item.Measured = AuthorText.Bind(measured.Text, place, _sink);
                return true;
            case NamesPropertySyntax { Keyword.Text: "hazard" } hazard:
                item.Hazards = HazardBinder.Added(item.Hazards, hazard, place, _sink);
                return true;
            case FigurePropertySyntax picture:
                if (FigureBinder.Bind(picture, place, _sink) is { } figure)
                {
                    item.Figures = item.Figures.Add(figure);
                }

                return true;
            case AlertSyntax alert:
                item.Alerts = item.Alerts.Add(Alerts.Bind(alert, place, _sink));
                return true;
            default:
                return false;
        }
    }

    private void Special(MachineItem item, PropertySyntax property, BindingPlace place)
    {
        switch (item)
        {
            case Part part:
                _parts.Property(part, property, place);
                break;
            case Joint joint:
                _joints.Property(joint, property, place);
                break;
            case Energy energy:
                _states.Property(energy, property, place);
                break;
            case Fluid fluid:
                _states.Property(fluid, property, place);
                break;
        }
    }
}
