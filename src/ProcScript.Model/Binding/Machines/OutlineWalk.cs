using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Rules.Machines;
using ProcScript.Model.Rules.Names;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Walks the text of a machine and notes its items.</summary>
internal sealed class OutlineWalk
{
    /// <summary>A machine with more items is a slip in a range, and would take all memory.</summary>
    internal const int MostItems = 50_000;

    private readonly MachineSymbol _symbol;
    private readonly SymbolLookup _lookup;
    private readonly JointOutlines _joints;
    private readonly FindingSink _sink = new();
    private readonly List<OutlineItem> _items = [];
    private OptionNames _options = new([], isComplete: true);
    private ulong _effective;
    private int _steps;

    private OutlineWalk(MachineSymbol symbol, SymbolLookup lookup)
    {
        _symbol = symbol;
        _lookup = lookup;
        _joints = new JointOutlines(_lookup, _items, _sink);
    }

    /// <summary>The outline of a machine.</summary>
    public static MachineOutline Of(MachineSymbol symbol, SymbolLookup lookup) => new OutlineWalk(symbol, lookup).Walk();

    private MachineOutline Walk()
    {
        var place = BindingPlace.In(_symbol.File);
        var options = Options(place);
        _options = new OptionNames(options, !_symbol.IsFaulty);
        Members(_symbol.Node.Members, place, -1, isTop: true);
        var title = _symbol.Node.Title is { } text ? AuthorText.Bind(text, place, _sink) : AuthorText.Named(_symbol.Node.Name, place);
        return new MachineOutline(_symbol, title, options, _items, _effective, _sink);
    }

    private ImmutableArray<Option> Options(BindingPlace place)
    {
        var options = new Dictionary<string, Option>(StringComparer.Ordinal);
        foreach (var syntax in _symbol.Node.Members.OfType<OptionSyntax>())
        {
            if (syntax.Name.IsMissing)
            {
                _sink.Poison();
                continue;
            }

            var name = syntax.Name.Text;
            var title = syntax.Title is { } text ? AuthorText.Bind(text, place, _sink) : AuthorText.Named(syntax.Name, place);
            var option = new Option(name, title, place.At(syntax.Name.Span));
            if (options.Count == OptionNames.Most)
            {
                _sink.Report(TooManyVariants.Declared(_symbol.Name, OptionNames.Most, option.Declared));
                break;
            }

            if (!options.TryAdd(name, option))
            {
                _sink.Report(DeclaredTwice.At(name, "an option", option.Declared, options[name].Declared, null));
            }
        }

        return [.. options.Values.OrderBy(option => option.Declared.Span.Start)];
    }

    private void Members(IEnumerable<SyntaxNode> members, BindingPlace place, int part, bool isTop)
    {
        foreach (var member in members)
        {
            if (!Spend(member, place))
            {
                return;
            }

            Member(member, place, part, isTop);
        }
    }

    /// <summary>Counts a line. False once there are too many; the first one too many is a finding.</summary>
    private bool Spend(SyntaxNode node, BindingPlace place)
    {
        if (_steps++ == MostItems)
        {
            _sink.Report(TooMuchToUnroll.Items(_symbol.Name, MostItems, place.At(node.Span)));
            _sink.LoseNames();
        }

        return _steps <= MostItems;
    }

    private void Member(SyntaxNode member, BindingPlace place, int part, bool isTop)
    {
        switch (member)
        {
            case OptionSyntax option when !isTop:
                _sink.Report(PropertyNotHere.Declaration("option", option.Name.Text, place.At(option.Span)), place);
                break;
            case EnergySyntax energy:
                Item(OutlineSort.Energy, "energy", energy.Name, energy.Title, energy.Properties, place, part);
                break;
            case FluidSyntax fluid:
                Item(OutlineSort.Fluid, "fluid", fluid.Name, fluid.Title, fluid.Properties, place, part);
                break;
            case ControlSyntax control:
                var positions = Positions(control, place);
                Item(OutlineSort.Control, "control", control.Name, control.Title, control.Properties, place, part, positions);
                break;
            case PlaceSyntax room:
                Item(OutlineSort.Place, "place", room.Name, room.Title, [], place, part, count: Counts.Bind(room.Room, "`room for`", place, _sink) ?? 0);
                break;
            case PartSyntax syntax:
                Item(OutlineSort.Part, "part", syntax.Name, syntax.Title, [], place, part, first: syntax.Members.FirstOrDefault());
                Members(syntax.Members, place, _items.Count - 1, isTop: false);
                break;
            case JointSyntax joint:
                var added = _items.Count;
                _joints.Add(joint, place, part, _options);
                for (; added < _items.Count; added++)
                {
                    Count(_items[added]);
                }

                break;
            case CoverSyntax cover when part >= 0:
                // Not here: the part's own properties say so. Its name is known nevertheless.
                _items[part].Members.Add(new OutlineMember(cover, place));
                _joints.AddAstray(cover, place, _options);
                break;
            case EachSyntax each:
                foreach (var turn in Unrolling.Each(each, place, _sink))
                {
                    if (!Spend(each, place))
                    {
                        return;
                    }

                    Members(each.Body, turn, part, isTop: false);
                }

                break;
            case WhenSyntax branch:
                if (Unrolling.When(branch.Test, place, _options, _sink) is { } body)
                {
                    Members(branch.Body, body, part, isTop: false);
                }

                break;
            case AsideSyntax aside when part < 0:
                _sink.Report(PropertyNotHere.Aside(place.At(aside.Span)), place);
                break;
            case PropertySyntax property when part < 0:
                new PropertyGate(PropertyHolders.Machine, _sink).Lets(property, place);
                break;
            case MemberSyntax property when part >= 0:
                _items[part].Members.Add(new OutlineMember(property, place));
                _effective |= place.Guards.Options;
                break;
        }
    }

    private void Item(
        OutlineSort sort,
        string word,
        ReferenceSyntax name,
        TextSyntax? title,
        ImmutableArray<MemberSyntax> properties,
        BindingPlace place,
        int part,
        ImmutableArray<string> positions = default,
        SyntaxNode? first = null,
        int count = 0)
    {
        if (part >= 0 && sort != OutlineSort.Part)
        {
            _sink.Report(PropertyNotHere.Declaration(word, name.Name.Text, place.At(name.Span)), place);
        }

        var canonical = CanonicalName.Of(name, place.Bindings);
        if (canonical.Length == 0)
        {
            _sink.LoseNames();
        }

        var item = new OutlineItem
        {
            Sort = sort,
            Name = canonical,
            Title = title is null ? AuthorText.Named(name, canonical, place) : AuthorText.Bind(title, place, _sink),
            Reference = name,
            Place = place,
            Parent = part,
            Positions = positions.IsDefault ? [] : positions,
            PositionTitles = positions.IsDefault ? [] : [.. positions.Select(position => AuthorText.Word(position, place))],
            First = first ?? properties.FirstOrDefault(),
            Count = count,
        };
        item.Members.AddRange(PropertyPlaces.Of(properties, place, _options, null, _sink).Select(one => new OutlineMember(one.Property, one.Place)));
        _items.Add(item);
        Count(item);
    }

    /// <summary>Counts the options that an item asks for, and those that its properties do.</summary>
    private void Count(OutlineItem item)
    {
        _effective |= item.Place.Guards.Options;
        foreach (var member in item.Members)
        {
            _effective |= member.Place.Guards.Options;
        }
    }

    private ImmutableArray<string> Positions(ControlSyntax control, BindingPlace place)
    {
        var positions = ImmutableArray.CreateBuilder<string>(control.Positions.Length);
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (var position in control.Positions)
        {
            if (position.IsMissing)
            {
                _sink.Poison();
            }
            else if (!known.Add(position.Text))
            {
                _sink.Report(DeclaredTwice.Value(position.Text, place.At(position.Span)), place);
            }
            else
            {
                positions.Add(position.Text);
            }
        }

        if (positions.Count < 2 && !place.File.HasSyntaxErrorsIn(control.Span))
        {
            var name = CanonicalName.Of(control.Name, place.Bindings);
            _sink.Report(ControlWithoutChoice.At(name, positions.Count, place.At(control.Name.Span)), place);
        }

        return positions.ToImmutable();
    }
}
