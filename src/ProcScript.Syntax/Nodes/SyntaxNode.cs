using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A node of the tree: immutable, with its exact place in the text, and without meaning.</summary>
/// <param name="Span">From the first to the last word, without the trivia around.</param>
public abstract record SyntaxNode(TextSpan Span)
{
    /// <summary>The nodes right below, in the order of the text.</summary>
    public IEnumerable<SyntaxNode> Children
    {
        get
        {
            var parts = Parts;
            var nodes = parts as IReadOnlyList<SyntaxNode> ?? [.. parts];
            for (var i = 1; i < nodes.Count; i++)
            {
                // Words that have changed places are read as they should stand.
                if (nodes[i].Span.Start < nodes[i - 1].Span.Start)
                {
                    return nodes.OrderBy(node => node.Span.Start);
                }
            }

            return nodes;
        }
    }

    /// <summary>The nodes right below, in the order in which they should be written.</summary>
    private protected abstract IEnumerable<SyntaxNode> Parts { get; }

    /// <summary>The node and all below it, parents first.</summary>
    public IEnumerable<SyntaxNode> DescendantsAndSelf()
    {
        var (open, below) = (new Stack<SyntaxNode>(), new List<SyntaxNode>());
        open.Push(this);
        while (open.TryPop(out var node))
        {
            yield return node;
            below.AddRange(node.Children);
            for (var at = below.Count - 1; at >= 0; at--)
            {
                open.Push(below[at]);
            }

            below.Clear();
        }
    }

    /// <summary>The given nodes without those that are absent.</summary>
    private protected static IEnumerable<SyntaxNode> Present(params ReadOnlySpan<SyntaxNode?> nodes)
    {
        var present = new List<SyntaxNode>(nodes.Length);
        foreach (var node in nodes)
        {
            if (node is not null)
            {
                present.Add(node);
            }
        }

        return present;
    }
}
