using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using ProcScript.Analysis.Checking;
using ProcScript.Model.Names;
using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>What is kept of a library from one moment to the next, so that only what changed is done again.</summary>
internal sealed class LibraryMemory
{
    private readonly ConcurrentDictionary<string, SyntaxTree> _trees = new(StringComparer.Ordinal);

    /// <summary>The names of files that were walked.</summary>
    public ConditionalWeakTable<SyntaxTree, FileNames> Names { get; } = [];

    /// <summary>What came of earlier checks.</summary>
    public CheckMemory Checks { get; } = new();

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
