using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using ProcScript.Analysis;
using ProcScript.Analysis.Checking;
using ProcScript.Model.Names;
using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>What is kept of a library from one moment to the next, so that only what changed is done again.</summary>
internal sealed class LibraryMemory
{
    private readonly Lock _lock = new();
    private (CheckSettings Settings, CheckMemory Memory)? _checks;
    private readonly ConcurrentDictionary<string, SyntaxTree> _trees = new(StringComparer.Ordinal);

    /// <summary>The names of files that were walked.</summary>
    public ConditionalWeakTable<SyntaxTree, FileNames> Names { get; } = [];

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

    /// <summary>The tree of a text: the last one of the file where the text is the same.</summary>
    public SyntaxTree Parse(string path, string content)
    {
        if (_trees.TryGetValue(path, out var last) && string.Equals(last.Text.Content, content, StringComparison.Ordinal))
        {
            return last;
        }

        return _trees[path] = SyntaxTree.Parse(new SourceText(path, content));
    }
}
