using ProcScript.Syntax.Nodes;

namespace ProcScript.Syntax.Text;

/// <summary>What may be a name.</summary>
public static class NameText
{
    /// <summary>Whether the language takes a word as a name: it is asked by declaring one.</summary>
    public static bool IsName(string word)
    {
        var tree = SyntaxTree.Parse(new SourceText("name", $"tool {word}"));
        return tree.Findings.IsEmpty && tree.Root.Declarations is [CatalogSyntax { Name.Text: var read }] && read == word;
    }
}
