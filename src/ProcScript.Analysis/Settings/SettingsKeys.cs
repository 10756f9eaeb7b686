using System.Collections.Immutable;

namespace ProcScript.Analysis.Settings;

/// <summary>The keys of a settings file that are no rows of <see cref="SettingsTable"/>, and what they mean.</summary>
public static class SettingsKeys
{
    /// <summary>The name of the file, at the root of the library.</summary>
    public const string FileName = "procscript.json";

    /// <summary>Where editors find the schema; it chooses nothing.</summary>
    public const string Schema = "$schema";

    /// <summary>The files whose choices hold where this one makes none.</summary>
    public const string Extends = "extends";

    /// <summary>How much the findings of rules weigh.</summary>
    public const string Severities = "severities";

    /// <summary>What holds for some paths only.</summary>
    public const string Overrides = "overrides";

    /// <summary>The paths that an override is for.</summary>
    public const string Paths = "paths";

    /// <summary>Each key of a file with what it means, in Markdown.</summary>
    public static ImmutableArray<(string Key, string What)> OfFile { get; } =
    [
        (Schema, "Where an editor finds the schema of this file. It chooses nothing."),
        (Extends, "Another settings file of the library, or a list of them, relative to this one. What this file says outweighs them, and of a list "
            + "each outweighs those before it."),
        (Severities, "How much the findings of a rule weigh: `error`, `warning`, `hint` or `off`. A key is a code (`PRC5092`), a name "
            + "(`long-sentence`) or a family (`PRC5xxx`); code and name outweigh the family. What is an error by itself stays one: proof and safety are not for choosing."),
        (Overrides, "A list of choices that hold for some paths only: `paths`, a glob or a list of them, counted from the library's root, and beside it "
            + "any of the other settings. Where several match, the last one wins."),
    ];
}
