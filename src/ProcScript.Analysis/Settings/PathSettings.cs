using System.Collections.Immutable;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Settings;

/// <summary>What a shop has chosen, as it holds for one path.</summary>
public sealed class PathSettings
{
    private readonly ImmutableDictionary<Setting, ChosenValue> _values;
    private readonly ImmutableDictionary<string, ChosenSeverity> _severities;

    private PathSettings(ImmutableDictionary<Setting, ChosenValue> values, ImmutableDictionary<string, ChosenSeverity> severities)
    {
        _values = values;
        _severities = severities;
    }

    /// <summary>What holds where nothing is chosen.</summary>
    public static PathSettings BuiltIn { get; } =
        new(ImmutableDictionary<Setting, ChosenValue>.Empty, ImmutableDictionary<string, ChosenSeverity>.Empty);

    /// <summary>The value of a setting.</summary>
    public T Get<T>(Setting<T> setting)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(setting);
        return _values.TryGetValue(setting, out var chosen) ? (T)chosen.Value : setting.BuiltIn;
    }

    /// <summary>The value of a setting of any sort, and where it comes from.</summary>
    public (object Value, SettingOrigin Origin) Look(Setting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        return _values.TryGetValue(setting, out var chosen) ? (chosen.Value, chosen.Origin) : (setting.BuiltInValue, SettingOrigin.BuiltIn);
    }

    /// <summary>How much a finding of a rule weighs; null where the rule is off.</summary>
    public Severity? SeverityOf(RuleInfo rule) => LookSeverity(rule).Severity;

    /// <summary>How much a finding of a rule weighs, null for not at all, and where that comes from.</summary>
    public (Severity? Severity, SettingOrigin Origin) LookSeverity(RuleInfo rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        if (Get(SettingsTable.Wording) == WordingChoice.Neutral && RuleCatalog.Find(rule.Code) is { IsEnglish: true })
        {
            return (null, Look(SettingsTable.Wording).Origin);
        }

        return _severities.TryGetValue(rule.Code, out var chosen) ? (chosen.Severity, chosen.Origin) : (rule.DefaultSeverity, SettingOrigin.BuiltIn);
    }

    /// <summary>The same with what a layer chooses.</summary>
    internal PathSettings With(SettingsLayer layer) => new(_values.SetItems(layer.Values), _severities.SetItems(layer.Severities));
}
