namespace ProcScript.Model.Quantities;

/// <summary>
/// A unit of measure: a value in it times <paramref name="Factor"/> plus <paramref name="Offset"/> is the value in the base unit.
/// </summary>
/// <param name="Symbol">As cards print it, such as <c>N·m</c>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Base units in one.</param>
/// <param name="Offset">Base units at zero; only temperatures have one.</param>
public sealed record Unit(string Symbol, Dimension Dimension, double Factor, double Offset = 0);
