using System.Collections.Immutable;
using System.Text.Json;
using ProcScript.Analysis.Settings.Json;

namespace ProcScript.Analysis.Settings;

/// <summary>One thing that a shop may choose: a row of <see cref="SettingsTable"/>.</summary>
public abstract class Setting
{
    /// <summary>What it is called in the file; a dot parts the name of a group from that of a member.</summary>
    public required string Key { get; init; }

    /// <summary>What it is, for people; Markdown.</summary>
    public required string What { get; init; }

    /// <summary>The codes of the rules that read it.</summary>
    public ImmutableArray<string> Rules { get; init; } = [];

    /// <summary>Whether it is about the library as a whole, so that no path can have another.</summary>
    public bool IsOfLibrary { get; init; }

    /// <summary>What may be written, in words: <c>a mass in quotes, up to 23 kg</c>.</summary>
    public abstract string Choices { get; }

    /// <summary>What holds where nothing is chosen.</summary>
    public abstract object BuiltInValue { get; }

    /// <summary>A value as people read it.</summary>
    public abstract string Print(object value);

    /// <summary>Writes a value as JSON, as a settings file has it.</summary>
    public virtual void Write(Utf8JsonWriter writer, object value)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(Print(value));
    }

    /// <summary>The value that is written; null with a finding where it is none.</summary>
    internal abstract object? Read(SettingsNode node, SettingsSink sink);
}

/// <summary>A setting with values of a type.</summary>
/// <typeparam name="T">The type.</typeparam>
public abstract class Setting<T> : Setting
    where T : notnull
{
    /// <summary>What holds where nothing is chosen.</summary>
    public required T BuiltIn { get; init; }

    /// <inheritdoc/>
    public override object BuiltInValue => BuiltIn;
}
