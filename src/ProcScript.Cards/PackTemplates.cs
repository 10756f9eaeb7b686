using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Cards.Templating;
using Scriban;

namespace ProcScript.Cards;

/// <summary>
/// The templates that a pack is made from: the standard ones, file by file replaced by a shop's own. It never changes once made
/// and may serve any number of packs at once.
/// </summary>
public sealed class PackTemplates
{
    private static readonly Lazy<PackTemplates> StandardTemplates = new(() => new PackTemplates(StandardFiles.Read(), []));

    private readonly FrozenDictionary<string, Template> _templates;
    private readonly FrozenDictionary<string, string> _files;

    private PackTemplates(FrozenDictionary<string, string> files, ImmutableArray<TemplateFault> unknown)
    {
        _files = files;
        // A script has braces of its own and nothing to fill in.
        _templates = files.Where(file => !file.Key.EndsWith(".js", StringComparison.Ordinal))
            .ToFrozenDictionary(file => file.Key, file => Scriban.Template.Parse(file.Value, file.Key), StringComparer.Ordinal);
        Faults = [.. unknown, .. _templates.OrderBy(template => template.Key, StringComparer.Ordinal).SelectMany(template => TemplateFaults.Of(template.Value))];
    }

    /// <summary>The standard templates.</summary>
    public static PackTemplates Standard => StandardTemplates.Value;

    /// <summary>The names of all templates, in order: a shop may replace any of them.</summary>
    public static ImmutableArray<string> Names { get; } = StandardFiles.Names;

    /// <summary>What is wrong with these templates before anything is filled in; with faults no pack is made.</summary>
    public ImmutableArray<TemplateFault> Faults { get; }

    /// <summary>These templates with some replaced.</summary>
    /// <param name="files">The text of each by its name; a name that is none of <see cref="Names"/> is a fault.</param>
    public PackTemplates With(IReadOnlyDictionary<string, string> files)
    {
        var unknown = files.Keys.Where(name => !_files.ContainsKey(name)).Order(StringComparer.Ordinal).Select(TemplateFaults.Unknown);
        var known = files.Where(file => _files.ContainsKey(file.Key)).ToDictionary(file => file.Key, file => StandardFiles.Normalized(file.Value), StringComparer.Ordinal);
        var merged = _files.ToDictionary(file => file.Key, file => known.GetValueOrDefault(file.Key, file.Value), StringComparer.Ordinal);
        return new PackTemplates(merged.ToFrozenDictionary(StringComparer.Ordinal), [.. unknown]);
    }

    internal Template Parsed(string name) => _templates[name];

    internal string Raw(string name) => _files[name];

    internal void CopyTo(Dictionary<string, Template> cache)
    {
        foreach (var (name, template) in _templates)
        {
            cache[name] = template;
        }
    }
}
