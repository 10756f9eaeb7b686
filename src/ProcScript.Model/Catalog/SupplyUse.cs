using ProcScript.Model.Quantities;

namespace ProcScript.Model.Catalog;

/// <summary>An amount of a supply that is used up.</summary>
/// <param name="Supply">What.</param>
/// <param name="Amount">How much; the dimension <see cref="Dimension.Count"/> for pieces.</param>
/// <param name="IsSeal">Whether it was written as <c>seals</c>.</param>
public sealed record SupplyUse(Supply Supply, Quantity Amount, bool IsSeal);
