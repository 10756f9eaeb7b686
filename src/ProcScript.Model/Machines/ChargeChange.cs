using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Machines;

/// <summary>What a new part adds to a fluid or takes from it.</summary>
/// <param name="Part">The part that is replaced.</param>
/// <param name="Adds">Whether more goes in; else less.</param>
/// <param name="Amount">How much.</param>
/// <param name="Supply">Of what; null for the fluid itself.</param>
public sealed record ChargeChange(Part Part, bool Adds, Quantity Amount, Supply? Supply);
