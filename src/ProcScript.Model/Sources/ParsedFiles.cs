using System.Collections.Concurrent;
using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Sources;

/// <summary>
/// The trees of files, for a store whose files change all the time: of a text that was parsed before, the same tree; of a changed one, a
/// tree with the same nodes for every declaration that the change did not touch. Its texts have room to grow: see <see cref="SlackLayout"/>.
/// </summary>
public sealed class ParsedFiles
{
    private readonly ConcurrentDictionary<string, Laid> _files = new(StringComparer.Ordinal);

    /// <summary>The tree of a file. Safe to call from several threads.</summary>
    /// <param name="path">The file.</param>
    /// <param name="written">Its text.</param>
    public SyntaxTree Parse(string path, string written)
    {
        if (!_files.TryGetValue(path, out var last))
        {
            var layout = SlackLayout.Of(written);
            return (_files[path] = new Laid(layout, SyntaxTree.Parse(layout.ToText(path)))).Tree;
        }

        if (string.Equals(last.Tree.Text.Written, written, StringComparison.Ordinal))
        {
            return last.Tree;
        }

        var changed = last.Layout.With(written);
        return (_files[path] = new Laid(changed, last.Tree.With(changed.ToText(path)))).Tree;
    }

    private sealed record Laid(SlackLayout Layout, SyntaxTree Tree);
}
