using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>A hazard that a job touches.</summary>
/// <param name="Word">The word of the language, such as <c>high_voltage</c>.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Caution">The usual caution.</param>
/// <param name="Items">The titles of what is marked with it.</param>
public sealed record PlanHazard(string Word, string Title, string Caution, ImmutableArray<string> Items);
