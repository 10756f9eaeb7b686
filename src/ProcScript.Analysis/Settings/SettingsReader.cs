using System.Collections.Immutable;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Rules.Settings;
using ProcScript.Analysis.Settings.Json;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Settings;

/// <summary>Reads the settings of a library: the file at its root and what that extends. Every face reads them here.</summary>
public sealed class SettingsReader
{
    private readonly ISourceStore _store;
    private readonly List<Finding> _findings = [];
    private readonly List<SourceText> _files = [];
    private readonly List<SettingsLayer> _layers = [];
    private readonly HashSet<string> _applied = new(StringComparer.Ordinal);

    private SettingsReader(ISourceStore store) => _store = store;

    /// <summary>What a library's settings choose; what is wrong with them stands in <see cref="CheckSettings.Findings"/>.</summary>
    /// <param name="store">The files of the library.</param>
    public static CheckSettings Read(ISourceStore store)
    {
        ArgumentNullException.ThrowIfNull(store);
        return new SettingsReader(store).Read().WithTranslation(store);
    }

    private CheckSettings Read()
    {
        var reading = _store.Read(SettingsKeys.FileName);
        if (reading.Outcome != SourceOutcome.Missing)
        {
            var root = new SourceSpan(SettingsKeys.FileName, default);
            Apply(SettingsKeys.FileName, reading, root, []);
        }

        foreach (var (path, stray) in Strays())
        {
            _findings.Add(StraySettings.At(path));
            _files.Add(new SourceText(path, stray.Content ?? ""));
        }

        return new CheckSettings { Findings = FindingMerge.Sort(_findings), Files = [.. _files], Layers = [.. _layers] };
    }

    /// <summary>Takes in a file after those that it extends, once.</summary>
    /// <param name="path">The file.</param>
    /// <param name="reading">What came of reading it.</param>
    /// <param name="asked">Where it is asked for.</param>
    /// <param name="extending">The places that led here, outermost first, each in the file that it stands in.</param>
    private void Apply(string path, SourceReading reading, SourceSpan asked, ImmutableArray<(string To, SourceSpan Place)> extending)
    {
        if (reading.Content is not { } content)
        {
            _findings.Add(SettingsFileMissing.At(path, reading, asked));
            return;
        }

        if (!_applied.Add(path))
        {
            return;
        }

        var text = new SourceText(path, content);
        _files.Add(text);
        var sink = new SettingsSink(text, _findings);
        if (Parse(text, sink) is not { } file)
        {
            return;
        }

        foreach (var extended in SettingsFile.Extended(file, sink))
        {
            Follow(path, extended, extending, sink);
        }

        _layers.AddRange(SettingsFile.Layers(file, sink));
    }

    private void Follow(string path, TextNode extended, ImmutableArray<(string To, SourceSpan Place)> extending, SettingsSink sink)
    {
        var place = sink.At(extended.Span);
        if (LibraryPath.Resolve(path, extended.Value) is not { Length: > 0 } to)
        {
            _findings.Add(SettingsFileMissing.Outside(extended.Value, place));
            return;
        }

        var way = extending.Add((to, place));
        if (to == path || extending.Any(step => step.To == to) || to == SettingsKeys.FileName)
        {
            _findings.Add(SettingsInCircle.At(to, way));
            return;
        }

        Apply(to, _store.Read(to), place, way);
    }

    private static ObjectNode? Parse(SourceText text, SettingsSink sink)
    {
        try
        {
            switch (SettingsText.Read(text.Content))
            {
                case ObjectNode file:
                    return file;
                case { } other:
                    sink.Report(SettingsNotJson.NoObject(other.Sort, sink.At(other.Span)));
                    return null;
                default:
                    return null;
            }
        }
        catch (SettingsTextException failure)
        {
            var span = new TextSpan(failure.Offset, failure.Offset < text.Content.Length ? 1 : 0);
            sink.Report(SettingsNotJson.At(failure.Message, sink.At(span)));
            return null;
        }
    }

    /// <summary>Files of that name beside the sources, deeper than the root.</summary>
    private IEnumerable<(string Path, SourceReading Reading)> Strays() => _store.Paths
        .Where(path => path.Contains('/'))
        .Select(path => path[..path.LastIndexOf('/')])
        .Distinct(StringComparer.Ordinal)
        .SelectMany(Upwards)
        .Distinct(StringComparer.Ordinal)
        .Order(StringComparer.Ordinal)
        .Select(folder => $"{folder}/{SettingsKeys.FileName}")
        .Where(path => !_applied.Contains(path))
        .Select(path => (Path: path, Reading: _store.Read(path)))
        .Where(stray => stray.Reading.Outcome != SourceOutcome.Missing)
        .ToList();

    private static IEnumerable<string> Upwards(string folder)
    {
        for (var current = folder; current.Length > 0; current = current.Contains('/') ? current[..current.LastIndexOf('/')] : "")
        {
            yield return current;
        }
    }
}
