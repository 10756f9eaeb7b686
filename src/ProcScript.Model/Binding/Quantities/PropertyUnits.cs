using System.Collections.Immutable;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Binding.Quantities;

/// <summary>What the figure of a property may measure, for those who write one.</summary>
public static class PropertyUnits
{
    /// <summary>The dimensions; none where it may be anything, or the property takes no figure.</summary>
    /// <param name="property">The word of the property.</param>
    public static ImmutableArray<Dimension> Of(string property) =>
        property == "uses" ? QuantityDemand.Uses.Dimensions : QuantityDemand.Find(property)?.Dimensions ?? [];
}
