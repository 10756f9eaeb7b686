using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Catalog;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Catalog;

/// <summary>Binds the declarations of the catalog.</summary>
internal sealed class CatalogBinder(SymbolTable table, SymbolLookup lookup, Validity validity)
{
    private readonly SymbolLookup _lookup = lookup;

    /// <summary>Binds every catalog declaration: tools and supplies first, then the kinds, which name them.</summary>
    public void BindAll(FindingSink sink)
    {
        foreach (var symbol in table.All.OfType<CatalogSymbol>().Where(symbol => symbol is not KindSymbol))
        {
            Bind(symbol, sink);
        }

        foreach (var symbol in table.All.OfType<KindSymbol>())
        {
            Bind(symbol, sink);
        }
    }

    private void Bind(CatalogSymbol symbol, FindingSink all)
    {
        if (symbol.Sink is not { } sink || !validity.Holds(sink, symbol.File))
        {
            sink = new FindingSink();
            Bind(symbol, BindingPlace.In(symbol.File), sink);
            symbol.Sink = sink;
        }

        symbol.IsFaulty |= sink.HasErrors;
        foreach (var finding in sink.Findings)
        {
            all.Report(finding.Finding);
        }
    }

    private void Bind(CatalogSymbol symbol, BindingPlace place, FindingSink sink)
    {
        var title = symbol.Node.Title is { } text ? AuthorText.Bind(text, place, sink) : AuthorText.Named(symbol.Node.Name, place);
        switch (symbol)
        {
            case ToolSymbol tool:
                tool.Tool = Kept(tool, Tool(tool, title, place, sink));
                break;
            case SupplySymbol supply:
                supply.Supply = Kept(supply, Supply(supply, title, place, sink));
                break;
            case CertificateSymbol certificate:
                certificate.Certificate = Kept(certificate, Certificate(certificate, title, place, sink));
                break;
            case KindSymbol kind:
                kind.Kind = Kept(kind, Kind(kind, title, place, sink));
                break;
        }
    }

    /// <summary>The entry of before where it says the same: whoever read that need not read it again.</summary>
    private static TEntry Kept<TEntry>(CatalogSymbol symbol, TEntry now)
        where TEntry : class => (symbol.Bound ?? symbol.Before) is TEntry before && now.Equals(before) ? before : now;

    private static Kind Kept(KindSymbol symbol, Kind now)
    {
        if ((symbol.Bound ?? symbol.Before) is not Kind before)
        {
            return now;
        }

        // Lists are equal where they are one object.
        var same = now with
        {
            Tools = Kept(before.Tools, now.Tools),
            Hazards = Kept(before.Hazards, now.Hazards),
            Uses = Kept(before.Uses, now.Uses),
            Certificates = Kept(before.Certificates, now.Certificates),
            Ppe = Kept(before.Ppe, now.Ppe),
        };
        return same.Equals(before) ? before : now;
    }

    private static ImmutableArray<T> Kept<T>(ImmutableArray<T> before, ImmutableArray<T> now) => now.SequenceEqual(before) ? before : now;

    private static Tool Tool(ToolSymbol symbol, string title, BindingPlace place, FindingSink sink)
    {
        var tool = new Tool(symbol.Name, title, symbol.Declared);
        var gate = new PropertyGate(PropertyHolders.Tool, sink);
        foreach (var property in PropertyPlaces.OfCatalog(symbol.Node.Properties, place, sink))
        {
            if (gate.Lets(property, place) && property is QuantityPropertySyntax quantity)
            {
                var bound = QuantityBinder.Bind(quantity.Quantity, QuantityDemand.Of(quantity.Keyword.Text), place, sink);
                tool = quantity.Keyword.Text == "size" ? tool with { Size = bound } : tool with { Range = bound };
            }
        }

        return tool;
    }

    private static Supply Supply(SupplySymbol symbol, string title, BindingPlace place, FindingSink sink)
    {
        var supply = new Supply(symbol.Name, title, symbol.Declared);
        var gate = new PropertyGate(PropertyHolders.Supply, sink);
        foreach (var property in PropertyPlaces.OfCatalog(symbol.Node.Properties, place, sink))
        {
            if (gate.Lets(property, place))
            {
                supply = property is QuantityPropertySyntax cure
                    ? supply with { Cure = QuantityBinder.Bind(cure.Quantity, QuantityDemand.Of("cure"), place, sink) }
                    : supply with { SingleUse = true };
            }
        }

        return supply;
    }

    /// <summary>A certificate has a title and no more: whatever else is written is a finding.</summary>
    private static Certificate Certificate(CertificateSymbol symbol, string title, BindingPlace place, FindingSink sink)
    {
        var gate = new PropertyGate(PropertyHolders.Certificate, sink);
        foreach (var property in PropertyPlaces.OfCatalog(symbol.Node.Properties, place, sink))
        {
            gate.Lets(property, place);
        }

        return new Certificate(symbol.Name, title, symbol.Declared);
    }

    private Kind Kind(KindSymbol symbol, string title, BindingPlace place, FindingSink sink)
    {
        var kind = new Kind(symbol.Name, title, symbol.Category, symbol.Declared);
        var tools = ImmutableArray.CreateBuilder<Tool>();
        var uses = ImmutableArray.CreateBuilder<SupplyUse>();
        var ppe = ImmutableArray.CreateBuilder<string>();
        var gate = new PropertyGate(PropertyHolders.Kind, sink);
        foreach (var property in PropertyPlaces.OfCatalog(symbol.Node.Properties, place, sink))
        {
            if (!gate.Lets(property, place))
            {
                continue;
            }

            switch (property)
            {
                case ThreadPropertySyntax thread:
                    kind = kind with { Thread = thread.Designation };
                    break;
                case GradePropertySyntax grade:
                    kind = kind with { Grade = grade.Grade };
                    break;
                case QuantityPropertySyntax quantity:
                    kind = WithQuantity(kind, quantity, place, sink);
                    break;
                case NamesPropertySyntax { Keyword.Text: "drive" } drive when SingleReference.Of(drive, place, sink) is { } name:
                    kind = kind with { Drive = _lookup.Tool(name, place, sink) };
                    break;
                case NamesPropertySyntax { Keyword.Text: "hazard" } hazard:
                    kind = kind with { Hazards = HazardBinder.Added(kind.Hazards, hazard, place, sink) };
                    break;
                case NamesPropertySyntax { Keyword.Text: "certified" } certified:
                    kind = kind with { Certificates = [.. kind.Certificates.Union(_lookup.Certificates(certified.Names, place, sink))] };
                    break;
                case NamesPropertySyntax { Keyword.Text: "on" or "carries" } end:
                    kind = WithoutEnd(kind, end, place, sink);
                    break;
                case NamesPropertySyntax names:
                    tools.AddRange(names.Names.Select(name => _lookup.Tool(name, place, sink)).OfType<Tool>());
                    break;
                case PiecesPropertySyntax { Keyword.Text: "cap" } cap:
                    kind = kind with { Cap = CapUses.Bind(cap, _lookup, place, sink) };
                    break;
                case PiecesPropertySyntax seals:
                    AddPresent(uses, SupplyUses.Bind(seals, _lookup, place, sink));
                    break;
                case UsesPropertySyntax used:
                    AddPresent(uses, SupplyUses.Bind(used, _lookup, place, sink));
                    break;
                case TorquePropertySyntax torque:
                    kind = kind with { Torque = TorqueBinder.Bind(torque, place, sink) };
                    break;
                case ChoicePropertySyntax pattern:
                    kind = kind with { Pattern = TorqueBinder.Pattern(pattern) };
                    break;
                case VerbsPropertySyntax verbs:
                    kind = kind with { Verbs = VerbPairs.Bind(verbs, place, sink) };
                    break;
                case FlagPropertySyntax flag:
                    kind = WithFlag(kind, flag.Keyword.Text);
                    break;
                case TextPropertySyntax { Keyword.Text: "ppe" } text:
                    ppe.Add(AuthorText.Bind(text.Text, place, sink));
                    break;
                case LimitPropertySyntax prevailing:
                    kind = kind with { Prevailing = TorqueBinder.Prevailing(prevailing, place, sink) };
                    break;
                case TextPropertySyntax text:
                    kind = WithText(kind, text.Keyword.Text, AuthorText.Bind(text.Text, place, sink));
                    break;
            }
        }

        return kind with
        {
            SingleUse = kind.SingleUse || kind.Category == KindCategory.Bond,
            Tools = tools.ToImmutable(),
            Uses = uses.ToImmutable(),
            Ppe = ppe.ToImmutable(),
        };
    }

    private static Kind WithFlag(Kind kind, string keyword) => keyword switch
    {
        "captive" => kind with { Captive = true },
        "oiled" => kind with { Oiled = true },
        "thread locker" => kind with { ThreadLocker = true },
        "stretch" => kind with { Stretch = true },
        "keep in order" => kind with { KeepInOrder = true },
        _ => kind with { SingleUse = true },
    };

    /// <summary>A kind knows no machine, so that all it can say of energies and fluids is that there is none.</summary>
    private static Kind WithoutEnd(Kind kind, NamesPropertySyntax end, BindingPlace place, FindingSink sink)
    {
        if (end.Names is not [{ Name.Text: "none", Indices.IsEmpty: true }])
        {
            sink.Report(PropertyNotHere.EndOfKind(end, place), place);
            return kind;
        }

        return end.Keyword.Text == "on" ? kind with { IsOnNone = true } : kind with { CarriesNone = true };
    }

    private static Kind WithText(Kind kind, string keyword, string text) => keyword switch
    {
        "release" => kind with { Release = text },
        "engage" => kind with { Engage = text },
        "reuse because" => kind with { Reuse = text },
        _ => kind with { Coating = text },
    };

    private static Kind WithQuantity(Kind kind, QuantityPropertySyntax property, BindingPlace place, FindingSink sink)
    {
        var quantity = QuantityBinder.Bind(property.Quantity, QuantityDemand.Of(property.Keyword.Text), place, sink);
        return property.Keyword.Text switch
        {
            "length" => kind with { Length = quantity },
            "cure" => kind with { Cure = quantity },
            "spare" => kind with { Spare = quantity },
            _ => kind with { Time = quantity },
        };
    }

    private static void AddPresent(ImmutableArray<SupplyUse>.Builder uses, SupplyUse? use)
    {
        if (use is not null)
        {
            uses.Add(use);
        }
    }
}
