using System.Collections.Immutable;

namespace ProcScript.Cli.Sources;

/// <summary>What the user named to read from.</summary>
/// <param name="Paths">Files, folders, or <c>-</c> for the standard input, as typed.</param>
/// <param name="Root">The library's root folder as typed, or null to find it.</param>
internal sealed record InputRequest(ImmutableArray<string> Paths, string? Root);
