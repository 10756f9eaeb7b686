using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Syntax.Tests;

/// <summary>The good files that the tests start from, and what they ask of a tree.</summary>
internal static class Sample
{
    public static string Catalog => Read("catalog.proc");

    public static string Cab => Read("cab.proc");

    public static string Evaporator => Read("evaporator.proc");

    /// <summary>A file with every sentence of the language in it.</summary>
    public static string Everything => Read("everything.proc");

    public static IReadOnlyList<string> All => [Catalog, Cab, Evaporator, Everything];

    public static string Read(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Samples", name));

    public static SyntaxTree Parse(string content) =>
        SyntaxTree.Parse(new SourceText("a.proc", content), TestContext.Current.CancellationToken);

    /// <summary>The tokens that are neither blanks nor comments.</summary>
    public static IEnumerable<SyntaxToken> Words(SyntaxTree tree) => tree.Tokens.Where(token =>
        token.Category is not (TokenCategory.WhiteSpace or TokenCategory.LineBreak or TokenCategory.Comment));

    public static TNode Only<TNode>(this SyntaxTree tree)
        where TNode : SyntaxNode => tree.Root.DescendantsAndSelf().OfType<TNode>().Single();

    /// <summary>The text with the first fix of a finding carried out.</summary>
    public static string Fixed(string content, Finding finding)
    {
        foreach (var edit in finding.Fixes[0].Edits.OrderByDescending(edit => edit.Place.Span.Start))
        {
            content = content.Remove(edit.Place.Span.Start, edit.Place.Span.Length).Insert(edit.Place.Span.Start, edit.NewText);
        }

        return content;
    }
}
