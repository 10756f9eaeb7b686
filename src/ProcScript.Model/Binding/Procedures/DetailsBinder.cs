using System.Collections.Immutable;
using ProcScript.Model.Binding.Catalog;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Binds the block of an action.</summary>
internal sealed class DetailsBinder(SymbolLookup lookup, ConditionBinder conditions, FindingSink sink)
{
    /// <summary>What the block says, and the conditions that stand in it.</summary>
    public (ActionDetails Details, ImmutableArray<Condition> Conditions) Bind(
        ImmutableArray<PropertySyntax> properties, PropertyHolders holder, BindingPlace place)
    {
        if (properties.IsEmpty)
        {
            return (ActionDetails.None, []);
        }

        var block = Read(properties.Select(property => (property, place)), holder);
        return (block.ToDetails(), [.. block.Conditions]);
    }

    /// <summary>What properties at several places of one procedure say.</summary>
    public ActionDetails Bind(ImmutableArray<(PropertySyntax Property, BindingPlace Place)> properties, PropertyHolders holder) =>
        Read(properties, holder).ToDetails();

    private Block Read(IEnumerable<(PropertySyntax Property, BindingPlace Place)> properties, PropertyHolders holder)
    {
        var block = new Block();
        var gate = new PropertyGate(holder, sink);
        foreach (var (property, place) in properties)
        {
            if (gate.Lets(property, place))
            {
                Property(property, block, place);
            }
        }

        return block;
    }

    private void Property(PropertySyntax property, Block block, BindingPlace place)
    {
        switch (property)
        {
            case TextPropertySyntax text:
                Text(text.Keyword.Text, AuthorText.Bind(text.Text, place, sink), block);
                break;
            case NamesPropertySyntax tools:
                block.Tools.AddRange(tools.Names.Select(name => lookup.Tool(name, place, sink)).OfType<Tool>());
                break;
            case PeoplePropertySyntax people:
                block.People = Counts.Bind(people.Count, "`people`", place, sink) ?? 0;
                break;
            case QuantityPropertySyntax { Keyword.Text: "time" } time:
                block.Time = QuantityBinder.Bind(time.Quantity, QuantityDemand.Of("time"), place, sink);
                break;
            case QuantityPropertySyntax torque:
                block.Torque = QuantityBinder.Bind(torque.Quantity, QuantityDemand.Of("torque"), place, sink);
                break;
            case UsesPropertySyntax uses:
                if (SupplyUses.Bind(uses, lookup, place, sink) is { } use)
                {
                    block.Uses.Add(use);
                }

                break;
            case NeedsPropertySyntax needs:
                block.Conditions.AddRange(conditions.Needs(needs.Needs, needs.Phase, place));
                break;
            case AlertSyntax alert:
                block.Alerts.Add(Alerts.Bind(alert, place, sink));
                break;
            case RefitPropertySyntax refit:
                block.Refit = Bind(refit.Properties, PropertyHolders.Refit, place).Details;
                break;
        }
    }

    private static void Text(string keyword, string text, Block block)
    {
        switch (keyword)
        {
            case "how":
                block.How.Add(text);
                break;
            case "photo":
                block.Photos.Add(text);
                break;
            case "check":
                block.Checks.Add(text);
                break;
            case "ppe":
                block.Ppe.Add(text);
                break;
            case "store":
                block.Store = text;
                break;
        }
    }

    /// <summary>What a block has said so far.</summary>
    private sealed class Block
    {
        public List<string> How { get; } = [];

        public List<Tool> Tools { get; } = [];

        public int People { get; set; }

        public Quantity? Time { get; set; }

        public List<string> Photos { get; } = [];

        public List<string> Checks { get; } = [];

        public string? Store { get; set; }

        public Quantity? Torque { get; set; }

        public List<string> Ppe { get; } = [];

        public List<SupplyUse> Uses { get; } = [];

        public List<Alert> Alerts { get; } = [];

        public List<Condition> Conditions { get; } = [];

        public ActionDetails? Refit { get; set; }

        public ActionDetails ToDetails() => new()
        {
            How = [.. How],
            Tools = [.. Tools],
            People = People,
            Time = Time,
            Photos = [.. Photos],
            Checks = [.. Checks],
            Store = Store,
            Torque = Torque,
            Ppe = [.. Ppe],
            Uses = [.. Uses],
            Alerts = [.. Alerts],
            Refit = Refit,
        };
    }
}
