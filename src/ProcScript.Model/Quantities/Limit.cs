using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Quantities;

/// <summary>What a reading must be.</summary>
/// <param name="Relation">How it compares.</param>
/// <param name="Quantity">With what.</param>
public sealed record Limit(LimitRelation Relation, Quantity Quantity);
