using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using ProcScript.Analysis;
using ProcScript.Analysis.Checking;
using ProcScript.Model;
using ProcScript.Model.Names;
using ProcScript.Model.Sources;
using ProcScript.Syntax;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>What is kept of a library from one moment to the next, so that only what changed is done again.</summary>
internal sealed class LibraryMemory
{
    private readonly Lock _lock = new();
    private (CheckSettings Settings, CheckMemory Memory)? _checks;

    /// <summary>The trees of files that were parsed.</summary>
    public ParsedFiles Files { get; } = new();

    /// <summary>The addresses of files by path.</summary>
    public ConcurrentDictionary<string, string> Uris { get; } = new(StringComparer.Ordinal);

    /// <summary>The names of files that were walked.</summary>
    public ConditionalWeakTable<SyntaxTree, FileNames> Names { get; } = [];

    /// <summary>What came of the last binding.</summary>
    public BindingMemory Binding { get; } = new();

    /// <summary>What came of earlier checks by the same settings; nothing where they changed since the last one.</summary>
    public CheckMemory ChecksBy(CheckSettings settings)
    {
        lock (_lock)
        {
            if (_checks is not { } last || !last.Settings.ChoosesAs(settings))
            {
                _checks = last = (settings, new CheckMemory());
            }

            return last.Memory;
        }
    }
}
