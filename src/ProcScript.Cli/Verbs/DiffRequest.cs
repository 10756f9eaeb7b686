using ProcScript.Cli.Output;

namespace ProcScript.Cli.Verbs;

/// <summary>What <c>diff</c> is asked to do.</summary>
/// <param name="Old">The old state, as typed.</param>
/// <param name="New">The new state, as typed.</param>
/// <param name="Root">The library's root folder as typed, or null to find it.</param>
/// <param name="Settings">What is chosen about the checks.</param>
/// <param name="Format">The form of the answer.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record DiffRequest(string Old, string New, string? Root, SettingsRequest Settings, DiffFormat Format, ColourChoice Colour);

/// <summary>The form in which <c>diff</c> answers.</summary>
internal enum DiffFormat
{
    /// <summary>For a terminal.</summary>
    Text,

    /// <summary>For a comment in a review.</summary>
    Markdown,

    /// <summary>For a program.</summary>
    Json,
}
