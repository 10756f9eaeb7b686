using System.Collections.Immutable;
using ProcScript.Jobs.Standing;

namespace ProcScript.Floor.Documents;

/// <summary>The jobs of a shop.</summary>
/// <param name="Jobs">A line each: what was worked on last comes first.</param>
/// <param name="Unreadable">The jobs that cannot be read, each with the reason.</param>
/// <param name="Time">The server's clock.</param>
public sealed record Board(ImmutableArray<JobLine> Jobs, ImmutableArray<string> Unreadable, DateTimeOffset Time);
