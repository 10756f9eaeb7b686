using System.Collections.Immutable;
using ProcScript.Analysis.Rules.Settings;
using ProcScript.Analysis.Settings.Json;
using ProcScript.Model.Binding.Names;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Settings;

/// <summary>Reads the choices that stand together: the values by the table of settings, and the severities.</summary>
/// <param name="sink">What is wrong with them.</param>
/// <param name="isOverride">Whether they are for some paths only.</param>
internal sealed class LayerReader(SettingsSink sink, bool isOverride)
{
    private static readonly NearNames RuleNames = new(RuleCatalog.All.SelectMany(rule => new[] { rule.Info.Code, rule.Info.Name }));

    private readonly ImmutableDictionary<Setting, ChosenValue>.Builder _values = ImmutableDictionary.CreateBuilder<Setting, ChosenValue>();
    private readonly ImmutableDictionary<string, ChosenSeverity>.Builder _severities = ImmutableDictionary.CreateBuilder<string, ChosenSeverity>(StringComparer.Ordinal);

    /// <summary>Reads the members of an object.</summary>
    /// <param name="choices">The object.</param>
    /// <param name="known">The keys that may stand in it.</param>
    public SettingsLayer Read(ObjectNode choices, ImmutableArray<string> known)
    {
        Read(choices, "", known);
        return new SettingsLayer { Values = _values.ToImmutable(), Severities = _severities.ToImmutable() };
    }

    private void Read(ObjectNode choices, string group, ImmutableArray<string> known)
    {
        foreach (var member in Once(choices))
        {
            var key = group + member.Key;
            if (SettingsTable.Find(key) is { } setting)
            {
                Read(setting, member);
            }
            else if (!known.Contains(member.Key))
            {
                sink.Report(UnknownSetting.At(key, group, known, sink.At(member.KeySpan)));
            }
            else if (group.Length == 0 && member.Key == SettingsKeys.Severities)
            {
                ReadSeverities(member);
            }
            else if (SettingsTable.All.Where(one => one.Key.StartsWith(key + '.', StringComparison.Ordinal)).ToList() is { Count: > 0 } members)
            {
                ReadGroup(member, key + '.', members);
            }
        }
    }

    private void ReadGroup(SettingsMember member, string group, List<Setting> members)
    {
        if (member.Value is ObjectNode inner)
        {
            Read(inner, group, [.. members.Select(setting => setting.Key[group.Length..])]);
        }
        else
        {
            sink.Report(WrongSortOfSetting.At(member.Key, member.Value.Sort, "its settings in braces", sink.At(member.Value.Span)));
        }
    }

    private void Read(Setting setting, SettingsMember member)
    {
        if (isOverride && setting.IsOfLibrary)
        {
            sink.Report(UnknownSetting.OfLibrary(setting.Key, sink.At(member.KeySpan)));
        }
        else if (setting.Read(member.Value, sink) is { } value)
        {
            _values[setting] = new ChosenValue(value, SettingOrigin.At(sink.At(member.KeySpan)));
        }
    }

    private void ReadSeverities(SettingsMember member)
    {
        if (member.Value is not ObjectNode severities)
        {
            sink.Report(WrongSortOfSetting.At(SettingsKeys.Severities, member.Value.Sort, "rules and severities in braces", sink.At(member.Value.Span)));
            return;
        }

        var chosen = new List<(SettingsMember Member, SeverityKey Key, Severity? Severity)>();
        foreach (var one in Once(severities))
        {
            if (SeverityKey.Of(one.Key) is not { } key)
            {
                sink.Report(SeverityOfNoRule.At(one.Key, RuleNames.Find(one.Key), sink.At(one.KeySpan)));
            }
            else if (one.Value is not TextNode word)
            {
                sink.Report(WrongSortOfSetting.At(one.Key, one.Value.Sort, "a severity in quotes", sink.At(one.Value.Span)));
            }
            else if (!SeverityChoice.TryRead(word.Value, out var severity))
            {
                sink.Report(UnknownChoice.At(one.Key, word.Value, SeverityChoice.Words, sink.At(word.Span)));
            }
            else
            {
                chosen.Add((one, key, severity));
            }
        }

        // A rule by itself outweighs its family, wherever the two stand.
        foreach (var (one, key, severity) in chosen.OrderByDescending(one => one.Key.IsFamily))
        {
            Choose(one, key, severity);
        }
    }

    private void Choose(SettingsMember member, SeverityKey key, Severity? severity)
    {
        var origin = SettingOrigin.At(sink.At(member.KeySpan));
        var allowed = key.Rules.Where(rule => SeverityChoice.MayBe(rule, severity)).ToList();
        foreach (var rule in allowed)
        {
            _severities[rule.Code] = new ChosenSeverity(severity, origin);
        }

        if (allowed.Count == 0 && key.Rules.Length > 0)
        {
            sink.Report(SeverityBelowError.At(member.Key, key.Rules, severity, sink.At(member.Value.Span)));
        }
    }

    /// <summary>The members, of a key that stands twice the last one.</summary>
    private IEnumerable<SettingsMember> Once(ObjectNode choices)
    {
        var last = new Dictionary<string, SettingsMember>(StringComparer.Ordinal);
        foreach (var member in choices.Members)
        {
            if (last.TryGetValue(member.Key, out var before))
            {
                sink.Report(SettingGivenTwice.At(member.Key, sink.At(before.KeySpan), sink.At(member.KeySpan)));
            }

            last[member.Key] = member;
        }

        return choices.Members.Where(member => last[member.Key].KeySpan == member.KeySpan);
    }
}
