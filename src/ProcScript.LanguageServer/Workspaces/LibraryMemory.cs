using System.Collections.Concurrent;
using ProcScript.Analysis;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Model.Names;
using ProcScript.Model.Sources;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>What is kept of a library from one moment to the next, so that only what changed is done again.</summary>
internal sealed class LibraryMemory
{
    private readonly Lock _lock = new();
    private (LibraryFiles Files, CheckSettings Settings)? _settings;

    /// <summary>The trees of files that were parsed.</summary>
    public ParsedFiles Files { get; } = new();

    /// <summary>The addresses of files by path.</summary>
    public ConcurrentDictionary<string, string> Uris { get; } = new(StringComparer.Ordinal);

    /// <summary>The names of files that were walked.</summary>
    public KnownNames Names { get; } = new();

    /// <summary>What the last check that came to its end found; null before the first.</summary>
    public LibraryReport? Report { get; set; }

    /// <summary>What came of the last binding.</summary>
    public BindingMemory Binding { get; } = new();

    /// <summary>The settings of files: those of the last ones where nothing but sources changed since.</summary>
    public CheckSettings SettingsOf(LibraryFiles files)
    {
        lock (_lock)
        {
            var isSame = _settings is var (before, read)
                && files.ChangesSince(before) is { } changes
                && changes.All(path => files.Listed.Contains(path) && !read.Files.Any(file => file.Path == path));
            var settings = isSame ? _settings!.Value.Settings : SettingsReader.Read(files);
            _settings = (files, settings);
            return settings with { Today = files.Today };
        }
    }

    /// <summary>What came of earlier checks.</summary>
    public CheckMemory Checks { get; } = new();
}
