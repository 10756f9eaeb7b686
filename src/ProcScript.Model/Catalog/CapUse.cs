namespace ProcScript.Model.Catalog;

/// <summary>What closes the openings that are left once something is off.</summary>
/// <param name="Count">How many for one.</param>
/// <param name="Tool">The cap; it comes off again and so is a tool.</param>
public sealed record CapUse(int Count, Tool Tool);
