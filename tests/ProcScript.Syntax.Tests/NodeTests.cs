using System.Collections;
using System.Reflection;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Syntax.Tests;

public sealed class NodeTests
{
    [Fact]
    public void Every_kind_of_node_comes_from_the_samples()
    {
        var kinds = typeof(SyntaxNode).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(SyntaxNode)) && !type.IsAbstract);
        var made = Nodes().Select(node => node.GetType()).ToHashSet();

        Assert.DoesNotContain(kinds, kind => !made.Contains(kind));
    }

    [Fact]
    public void Children_are_all_nodes_that_a_node_holds()
    {
        foreach (var node in Nodes())
        {
            var held = node.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Where(property => property.Name != nameof(SyntaxNode.Children))
                .SelectMany(property => Held(property.GetValue(node)));

            Assert.Equal(Ordered(held), Ordered(node.Children));
        }
    }

    [Fact]
    public void Children_stand_in_the_order_of_the_text_and_within_their_parent()
    {
        Assert.All(Sample.All, content => AnyTextTests.AssertInOrder(Sample.Parse(content).Root));
    }

    [Fact]
    public void A_span_starts_and_ends_with_a_word()
    {
        foreach (var content in Sample.All)
        {
            var tree = Sample.Parse(content);
            var starts = Sample.Words(tree).Select(token => token.Span.Start).ToHashSet();
            var ends = Sample.Words(tree).Select(token => token.Span.End).ToHashSet();
            Assert.All(tree.Root.DescendantsAndSelf(), node =>
            {
                Assert.Contains(node.Span.Start, starts);
                Assert.Contains(node.Span.End, ends);
            });
        }
    }

    private static IEnumerable<SyntaxNode> Nodes() => Sample.All.SelectMany(content => Sample.Parse(content).Root.DescendantsAndSelf());

    private static IEnumerable<SyntaxNode> Held(object? value) => value switch
    {
        SyntaxNode node => [node],
        IEnumerable nodes and not string => nodes.OfType<SyntaxNode>(),
        _ => [],
    };

    private static IEnumerable<(int Start, int End, string Kind)> Ordered(IEnumerable<SyntaxNode> nodes) =>
        nodes.Select(node => (node.Span.Start, node.Span.End, node.GetType().Name)).Order();
}
