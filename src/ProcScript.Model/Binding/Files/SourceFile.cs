using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Files;

/// <summary>A file of the library, parsed.</summary>
/// <param name="index">Its place among the files, from 0 in the ordinal order of paths.</param>
/// <param name="path">Its root-relative path.</param>
/// <param name="tree">Its tree; of a file that could not be read, the tree of an empty text.</param>
/// <param name="isRead">Whether its text is there.</param>
internal sealed class SourceFile(int index, string path, SyntaxTree tree, bool isRead)
{
    private readonly int[] _errors = [.. ErrorStarts(tree).Order()];

    /// <summary>Its place among the files, from 0 in the ordinal order of paths.</summary>
    public int Index => index;

    /// <summary>Its root-relative path.</summary>
    public string Path => path;

    /// <summary>Its tree.</summary>
    public SyntaxTree Tree => tree;

    /// <summary>Whether its text is there.</summary>
    public bool IsRead => isRead;

    /// <summary>
    /// Whether the parser failed to understand something outside of declarations: one may have got lost there, or cut short.
    /// </summary>
    public bool HasStraySyntaxErrors { get; } = HasErrorsOutside(tree);

    /// <summary>Whether the parser failed to understand something.</summary>
    public bool HasSyntaxErrors => _errors.Length > 0;

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
