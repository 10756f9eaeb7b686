using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Settings;

/// <summary>Choices that were made together: those of a file, of one of its overrides, or of the command line. A later layer outweighs an earlier one.</summary>
internal sealed record SettingsLayer
{
    /// <summary>The paths that it is for; null for all.</summary>
    public PathGlobs? Paths { get; init; }

    /// <summary>The values.</summary>
    public ImmutableDictionary<Setting, ChosenValue> Values { get; init; } = ImmutableDictionary<Setting, ChosenValue>.Empty;

    /// <summary>The severities by the codes of rules.</summary>
    public ImmutableDictionary<string, ChosenSeverity> Severities { get; init; } = ImmutableDictionary<string, ChosenSeverity>.Empty;
}

/// <summary>A value, and where it was chosen.</summary>
/// <param name="Value">The value.</param>
/// <param name="Origin">Where.</param>
internal readonly record struct ChosenValue(object Value, SettingOrigin Origin);

/// <summary>A severity, and where it was chosen.</summary>
/// <param name="Severity">The severity; null for off.</param>
/// <param name="Origin">Where.</param>
internal readonly record struct ChosenSeverity(Severity? Severity, SettingOrigin Origin);
