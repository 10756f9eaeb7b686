using System.Collections.Immutable;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Texts;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Files;

/// <summary>A file of the library, parsed: from one binding to the next the same object, however its text changes.</summary>
/// <param name="path">Its root-relative path.</param>
internal sealed class SourceFile(string path)
{
    private int[] _errors = [];

    /// <summary>Its place among the files, from 0 in the ordinal order of paths.</summary>
    public int Index { get; set; }

    /// <summary>Its root-relative path.</summary>
    public string Path => path;

    /// <summary>Its tree; of a file that could not be read, the tree of an empty text.</summary>
    public SyntaxTree Tree { get; private set; } = null!;

    /// <summary>The tree of the last binding that came to its end; null where there was none.</summary>
    public SyntaxTree? SettledTree { get; set; }

    /// <summary>Its texts in another language; null where they are told as they are written.</summary>
    public FileTexts? Texts { get; set; }

    /// <summary>Whether its text is there.</summary>
    public bool IsRead { get; private set; }

    /// <summary>The names that it declared then, each with what it is.</summary>
    public ImmutableArray<(string Name, string Sort)> SettledNames { get; set; } = [];

    /// <summary>What it declares, as the symbol table made it last.</summary>
    public ImmutableArray<Symbol> Symbols { get; set; } = [];

    /// <summary>
    /// Whether the parser failed to understand something outside of declarations: one may have got lost there, or cut short.
    /// </summary>
    public bool HasStraySyntaxErrors { get; private set; }

    /// <summary>Whether it is another text than when a binding last came to its end.</summary>
    public bool IsChanged => !ReferenceEquals(Tree, SettledTree);

    /// <summary>Takes its text.</summary>
    public void Set(SyntaxTree tree, bool isRead)
    {
        IsRead = isRead;
        if (!ReferenceEquals(Tree, tree))
        {
            Tree = tree;
            _errors = tree.Findings.IsEmpty ? [] : [.. ErrorStarts(tree).Order()];
            HasStraySyntaxErrors = !tree.Findings.IsEmpty && HasErrorsOutside(tree);
        }
    }

    /// <summary>Whether the parser failed to understand something in a stretch.</summary>
    public bool HasSyntaxErrorsIn(TextSpan span)
    {
        var found = Array.BinarySearch(_errors, span.Start);
        var next = found >= 0 ? found : ~found;
        return next < _errors.Length && _errors[next] <= span.End;
    }

    private static bool HasErrorsOutside(SyntaxTree tree)
    {
        // Both are in the order of the text, and a text may be nothing but errors: one walk along the two.
        var declarations = tree.Root.Declarations;
        var next = 0;
        foreach (var start in ErrorStarts(tree).Order())
        {
            while (next < declarations.Length && declarations[next].Span.End < start)
            {
                next++;
            }

            if (next == declarations.Length || declarations[next].Span.Start > start)
            {
                return true;
            }
        }

        return false;
    }

    private static IEnumerable<int> ErrorStarts(SyntaxTree tree) => tree.Findings
        .Where(finding => finding.Rule.DefaultSeverity == Severity.Error)
        .Select(finding => finding.Primary.Span.Start);
}
