using System.Runtime.CompilerServices;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Names;

/// <summary>
/// The names of what was walked before: of a changed file only the declarations are walked that are others than before. One for a library,
/// from one time to the next.
/// </summary>
public sealed class KnownNames
{
    private readonly ConditionalWeakTable<SyntaxTree, FileNames> _files = [];
    private readonly ConditionalWeakTable<DeclarationSyntax, DeclarationNames> _declarations = [];

    /// <summary>The names of a file.</summary>
    public FileNames Of(SyntaxTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        return _files.GetValue(tree, one => new FileNames(
            [.. one.Root.Declarations.Select(declaration => _declarations.GetValue(declaration, walked => DeclarationNames.Of(one.Text, walked)))]));
    }
}
