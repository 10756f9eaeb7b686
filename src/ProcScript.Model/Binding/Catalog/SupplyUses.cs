using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Catalog;

/// <summary>Binds <c>uses</c> and <c>seals</c>.</summary>
internal static class SupplyUses
{
    /// <summary>The amount used up, or null with a finding.</summary>
    public static SupplyUse? Bind(UsesPropertySyntax uses, SymbolLookup lookup, BindingPlace place, FindingSink sink)
    {
        var supply = lookup.Supply(uses.Supply, place, sink);
        var amount = QuantityBinder.Bind(uses.Amount, QuantityDemand.Uses, place, sink);
        return supply is null || amount is null ? null : new SupplyUse(supply, amount, false);
    }

    /// <summary>The seals taken anew, or null with a finding.</summary>
    public static SupplyUse? Bind(PiecesPropertySyntax seals, SymbolLookup lookup, BindingPlace place, FindingSink sink)
    {
        var supply = lookup.Supply(seals.Item, place, sink);
        if (Counts.Bind(seals.Count, "`seals`", place, sink) is not { } count || supply is null)
        {
            return null;
        }

        return new SupplyUse(supply, new Quantity(count, count, count, Units.Piece, QuantityForm.Plain), true);
    }
}
