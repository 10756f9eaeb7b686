using System.Collections.Immutable;
using ProcScript.Analysis.Rules.Settings;
using ProcScript.Analysis.Settings.Json;

namespace ProcScript.Analysis.Settings;

/// <summary>What one settings file chooses, read by the table of settings.</summary>
internal static class SettingsFile
{
    private static readonly ImmutableArray<string> KeysOfFile =
        [.. SettingsKeys.OfFile.Select(key => key.Key).Concat(SettingsTable.All.Select(setting => FirstOf(setting.Key))).Distinct()];

    private static readonly ImmutableArray<string> KeysOfOverride =
        [SettingsKeys.Paths, SettingsKeys.Severities, .. SettingsTable.All.Where(setting => !setting.IsOfLibrary).Select(setting => FirstOf(setting.Key)).Distinct()];

    /// <summary>The files that a file extends.</summary>
    public static IEnumerable<TextNode> Extended(ObjectNode file, SettingsSink sink) => file.Members
        .Where(member => member.Key == SettingsKeys.Extends)
        .SelectMany(member => Texts(member, "the path of a file in quotes, or a list of them", sink))
        .ToList();

    /// <summary>The choices of a file, then those of its overrides.</summary>
    /// <param name="file">The file.</param>
    /// <param name="sink">What is wrong with it.</param>
    public static IEnumerable<SettingsLayer> Layers(ObjectNode file, SettingsSink sink)
    {
        var layers = new List<SettingsLayer> { new LayerReader(sink, isOverride: false).Read(file, KeysOfFile) };
        foreach (var member in file.Members.Where(member => member.Key == SettingsKeys.Overrides))
        {
            if (member.Value is not ListNode list)
            {
                sink.Report(WrongSortOfSetting.At(SettingsKeys.Overrides, member.Value.Sort, "a list of overrides in braces", sink.At(member.Value.Span)));
                continue;
            }

            layers.AddRange(list.Items.Select(item => Override(item, sink)).OfType<SettingsLayer>());
        }

        return layers;
    }

    private static SettingsLayer? Override(SettingsNode item, SettingsSink sink)
    {
        if (item is not ObjectNode choices)
        {
            sink.Report(WrongSortOfSetting.At(SettingsKeys.Overrides, item.Sort, "an override in braces", sink.At(item.Span)));
            return null;
        }

        var layer = new LayerReader(sink, isOverride: true).Read(choices, KeysOfOverride);
        var given = choices.Members.Where(member => member.Key == SettingsKeys.Paths).ToList();
        if (given.Count == 0)
        {
            sink.Report(OverrideOfNoPath.WithoutPaths(sink.At(choices.Span)));
            return null;
        }

        var globs = Texts(given[^1], "a glob in quotes, or a list of them", sink).Where(glob => IsGlob(glob, sink)).ToList();
        if (globs.Count == 0)
        {
            return null;
        }

        return layer with { Paths = PathGlobs.Of(globs.Select(glob => glob.Value)) };
    }

    private static bool IsGlob(TextNode glob, SettingsSink sink)
    {
        var problem = PathGlobs.Problem(glob.Value);
        if (problem is not null)
        {
            sink.Report(OverrideOfNoPath.NoGlob(glob.Value, problem, sink.At(glob.Span)));
        }

        return problem is null;
    }

    private static IEnumerable<TextNode> Texts(SettingsMember member, string choices, SettingsSink sink)
    {
        foreach (var node in member.Value is ListNode list ? list.Items : [member.Value])
        {
            if (node is TextNode text)
            {
                yield return text;
            }
            else
            {
                sink.Report(WrongSortOfSetting.At(member.Key, node.Sort, choices, sink.At(node.Span)));
            }
        }
    }

    private static string FirstOf(string key) => key.Split('.')[0];
}
