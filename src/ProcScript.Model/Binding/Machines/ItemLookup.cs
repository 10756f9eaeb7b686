using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Rules.Machines;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Resolves the names of a machine's items in one variant, and says what is wrong where one does not resolve.</summary>
/// <param name="outline">What the machine's text declares.</param>
/// <param name="items">The items of the variant.</param>
/// <param name="places">Its places, to which nothing is done.</param>
/// <param name="variant">The options that are on.</param>
/// <param name="sink">Where findings go.</param>
internal sealed class ItemLookup(
    MachineOutline outline, IReadOnlyDictionary<string, MachineItem> items, IReadOnlyDictionary<string, Workplace> places, ulong variant, FindingSink sink)
{
    /// <summary>The item that is named, or null with a finding. What follows from an error reported elsewhere stays quiet.</summary>
    /// <param name="reference">The name with its index.</param>
    /// <param name="place">Where.</param>
    /// <param name="step">The step that names it, where one does: an edit can put it in a <c>when</c>.</param>
    public MachineItem? Find(ReferenceSyntax reference, BindingPlace place, TextSpan? step = null)
    {
        var name = CanonicalName.Of(reference, place.Bindings);
        if (name.Length == 0)
        {
            sink.Poison();
            return null;
        }

        if (items.TryGetValue(name, out var item))
        {
            return item;
        }

        if (places.TryGetValue(name, out var area))
        {
            sink.Report(WrongSortOfItem.Place(area, place.At(reference.Span)), place);
            return null;
        }

        Lost(name, reference, place, step);
        return null;
    }

    /// <summary>The place that <c>in footwell</c> names, <see cref="Workplace.None"/> for <c>in none</c>, or null with a finding.</summary>
    public Workplace? Workplace(NamesPropertySyntax stands, BindingPlace place)
    {
        if (SaysNone(stands, place))
        {
            return Model.Machines.Workplace.None;
        }

        if (stands.Names is [{ Name.Text: "none", Indices.IsEmpty: true }] && !places.ContainsKey("none"))
        {
            return null;
        }

        if (SingleReference.Of(stands, place, sink) is not { } reference)
        {
            return null;
        }

        var name = CanonicalName.Of(reference, place.Bindings);
        if (places.TryGetValue(name, out var found))
        {
            return found;
        }

        if (name.Length == 0)
        {
            sink.Poison();
        }
        else if (items.TryGetValue(name, out var item))
        {
            sink.Report(WrongSortOfItem.At(name, ItemWords.Sort(item), ItemWords.Place, place.At(reference.Span), item.Declared), place);
        }
        else
        {
            Lost(name, reference, place, null);
        }

        return null;
    }

    /// <summary>Says what is wrong with a name that stands for nothing in this variant.</summary>
    private void Lost(string name, ReferenceSyntax reference, BindingPlace place, TextSpan? step)
    {
        var declared = outline.Find(name);
        if (declared.Count > 0)
        {
            if (declared.Any(one => one.Place.Guards.Hold(variant)))
            {
                // Declared in this variant and not there: its own finding says why.
                sink.Poison();
            }
            else
            {
                var finding = OnlyInSomeVariants.At(name, declared, outline.Options, variant, place, reference.Span, step);
                sink.Report(finding, place.Guards, namesOptions: true);
            }
        }
        else if (outline.LosesNames)
        {
            sink.Poison();
        }
        else if (outline.Family(reference.Name.Text) is { Count: > 0 } family)
        {
            var value = IndexMismatch.Value(reference, [.. family], outline.Items.Select(one => one.Name), place, sink);
            sink.Report(value ?? IndexMismatch.At(reference, name, [.. family], place, outline.Find(family[0])[0].Declared, sink), place);
        }
        else
        {
            var near = outline.Near(name, sink, one => items.ContainsKey(one) || places.ContainsKey(one));
            sink.Report(UnknownName.Item(name, outline.Symbol.Name, near, reference, place, isStep: step is not null), place);
        }
    }

    /// <summary>
    /// Whether a property says that there is none, as <c>on none</c> does. Where the machine has an item of that name nobody can tell, and a
    /// finding says so; then it is the item, which asks for more.
    /// </summary>
    public bool SaysNone(NamesPropertySyntax property, BindingPlace place)
    {
        if (property is not { Keyword.Text: "on" or "carries" or "in" or "renew with", Names: [{ Name.Text: "none", Indices.IsEmpty: true } name] })
        {
            return false;
        }

        if (items.TryGetValue(name.Name.Text, out var item))
        {
            sink.Report(AmbiguousNone.At(property.Keyword.Text, ItemWords.Sort(item), item.Declared, place.At(name.Span)), place);
            return false;
        }

        if (places.TryGetValue(name.Name.Text, out var area))
        {
            sink.Report(AmbiguousNone.At(property.Keyword.Text, ItemWords.Place, area.Declared, place.At(name.Span)), place);
            return false;
        }

        return true;
    }

    /// <summary>The properties of a block that count in this variant.</summary>
    public IEnumerable<(PropertySyntax Property, BindingPlace Place)> Properties(ImmutableArray<MemberSyntax> members, BindingPlace place) =>
        PropertyPlaces.Of(members, place, outline.OptionNames, variant, sink);

    /// <summary>The parts and joints of <c>renew with p, j</c>.</summary>
    public ImmutableArray<MachineItem> Disturbing(NamesPropertySyntax renew, BindingPlace place) =>
        [.. renew.Names.Select(name => Disturbing(name, place)).OfType<MachineItem>()];

    private MachineItem? Disturbing(ReferenceSyntax name, BindingPlace place)
    {
        var item = Find(name, place);
        if (item is null or Part or Joint)
        {
            return item;
        }

        var finding = WrongSortOfItem.At(item.Name, ItemWords.Sort(item), "a part or a joint", place.At(name.Span), item.Declared);
        sink.Report(finding, place);
        return null;
    }

    /// <summary>The item of one sort that is named, or null with a finding.</summary>
    public TItem? Find<TItem>(ReferenceSyntax reference, string wanted, BindingPlace place)
        where TItem : MachineItem
    {
        switch (Find(reference, place))
        {
            case TItem found:
                return found;
            case { } other:
                var sort = ItemWords.Sort(other);
                sink.Report(WrongSortOfItem.At(other.Name, sort, wanted, place.At(reference.Span), other.Declared), place);
                return null;
            default:
                return null;
        }
    }
}
