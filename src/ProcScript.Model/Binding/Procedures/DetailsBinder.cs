using System.Collections.Immutable;
using ProcScript.Model.Binding.Catalog;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Binds the block of an action.</summary>
internal sealed class DetailsBinder(SymbolLookup lookup, ItemLookup items, ConditionBinder conditions, FindingSink sink)
{
    /// <summary>What the block says, and the conditions that stand in it.</summary>
    public (ActionDetails Details, ImmutableArray<Condition> Conditions) Bind(
        ImmutableArray<MemberSyntax> properties, PropertyHolders holder, BindingPlace place)
    {
        var details = ActionDetails.None;
        ImmutableArray<Condition> needs = [];
        if (properties.IsEmpty)
        {
            return (details, needs);
        }

        var gate = new PropertyGate(holder, sink);
        foreach (var (property, where) in items.Properties(properties, place))
        {
            if (!gate.Lets(property, where))
            {
                continue;
            }

            if (property is NeedsPropertySyntax clause)
            {
                needs = needs.AddRange(conditions.Needs(clause, where));
            }
            else
            {
                details = With(details, property, where);
            }
        }

        return (details, needs);
    }

    /// <summary>The same of a line with instruments, which are its first tools.</summary>
    public (ActionDetails Details, ImmutableArray<Condition> Conditions) Bind(
        ImmutableArray<ReferenceSyntax> instruments, ImmutableArray<MemberSyntax> properties, BindingPlace place)
    {
        var bound = Bind(properties, PropertyHolders.TextAction, place);
        return instruments.IsEmpty
            ? bound
            : (bound.Details with { Tools = [.. lookup.Tools(instruments, place, sink), .. bound.Details.Tools] }, bound.Conditions);
    }

    /// <summary>What properties of one procedure say, each at its own place.</summary>
    public ActionDetails Bind(IEnumerable<(PropertySyntax Property, BindingPlace Place)> properties)
    {
        var details = ActionDetails.None;
        var gate = new PropertyGate(PropertyHolders.Procedure, sink);
        foreach (var (property, place) in properties)
        {
            if (gate.Lets(property, place))
            {
                details = With(details, property, place);
            }
        }

        return details;
    }

    private ActionDetails With(ActionDetails details, PropertySyntax property, BindingPlace place)
    {
        switch (property)
        {
            case TextPropertySyntax text:
                return With(details, text.Keyword.Text, AuthorText.Bind(text.Text, place, sink));
            case NamesPropertySyntax { Keyword.Text: "certified" } certified:
                return details with { Certificates = [.. details.Certificates.Union(lookup.Certificates(certified.Names, place, sink))] };
            case NamesPropertySyntax { Keyword.Text: "in" } stands:
                return details with { In = items.Workplace(stands, place) };
            case NamesPropertySyntax tools:
                return details with { Tools = details.Tools.AddRange(lookup.Tools(tools.Names, place, sink)) };
            case PeoplePropertySyntax people:
                return details with { People = Counts.Bind(people.Count, "`people`", place, sink) ?? 0 };
            case QuantityPropertySyntax { Keyword.Text: "time" } time:
                return details with { Time = QuantityBinder.Bind(time.Quantity, QuantityDemand.Of("time"), place, sink) };
            case TorquePropertySyntax torque:
                return details with { Torque = TorqueBinder.Bind(torque, place, sink), TorqueDeclared = place.At(torque.Span) };
            case ChoicePropertySyntax { Keyword.Text: "pattern" } pattern:
                return details with { Pattern = TorqueBinder.Pattern(pattern) };
            case FlagPropertySyntax { Keyword.Text: "signed" }:
                return details with { Signed = true };
            case FlagPropertySyntax:
                return details with { Hoist = true };
            case UsesPropertySyntax uses:
                return SupplyUses.Bind(uses, lookup, place, sink) is { } use ? details with { Uses = details.Uses.Add(use) } : details;
            case FigurePropertySyntax picture:
                return FigureBinder.Bind(picture, place, sink) is { } figure ? details with { Figures = details.Figures.Add(figure) } : details;
            case AlertSyntax alert:
                return details with { Alerts = details.Alerts.Add(Alerts.Bind(alert, place, sink)) };
            case RefitPropertySyntax refit:
                return details with { Refit = Bind(refit.Properties, PropertyHolders.Refit, place).Details };
            default:
                return details with { Lift = LiftBinder.With(details.Lift, property, place, sink) ?? details.Lift };
        }
    }

    private static ActionDetails With(ActionDetails details, string keyword, string text) => keyword switch
    {
        "how" => details with { How = details.How.Add(text) },
        "photo" => details with { Photos = details.Photos.Add(text) },
        "check" => details with { Checks = details.Checks.Add(text) },
        "ppe" => details with { Ppe = details.Ppe.Add(text) },
        "store" => details with { Store = text },
        "bag" => details with { Bag = text },
        _ => details,
    };
}
