using CsCheck;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Tests;

public sealed class AnyTextTests
{
    [Fact]
    public void The_tokens_of_any_text_are_the_text()
    {
        AnyText.Any.Sample(
            content =>
        {
            var position = 0;
            foreach (var token in Sample.Parse(content).Tokens)
            {
                Assert.Equal(position, token.Span.Start);
                Assert.True(token.Span.Length > 0);
                position = token.Span.End;
            }

            Assert.Equal(content.Length, position);
        });
    }

    [Fact]
    public void Findings_of_any_text_are_few_in_order_and_within_it()
    {
        AnyText.Any.Sample(
            content =>
        {
            var findings = Sample.Parse(content).Findings;

            Assert.InRange(findings.Length, 0, 102);
            Assert.Equal(findings.Select(finding => finding.Primary.Span.Start).Order(), findings.Select(finding => finding.Primary.Span.Start));
            Assert.All(findings, finding =>
            {
                AssertWithin(finding.Primary.Span, content);
                Assert.All(finding.Related, related => AssertWithin(related.Place.Span, content));
                Assert.All(finding.Fixes.SelectMany(fix => fix.Edits), edit => AssertWithin(edit.Place.Span, content));
                Assert.NotEmpty(finding.Message);
            });
        });
    }

    [Fact]
    public void The_nodes_of_any_text_lie_within_each_other_and_in_order()
    {
        AnyText.Any.Sample(
            content => AssertInOrder(Sample.Parse(content).Root));
    }

    [Fact]
    public void The_same_text_gives_the_same_tree_and_findings()
    {
        AnyText.Changed.Sample(
            content =>
        {
            var first = Sample.Parse(content);
            var second = Sample.Parse(content);

            Assert.Equal(first.Root.DescendantsAndSelf().Select(node => (node.GetType(), node.Span)), second.Root.DescendantsAndSelf().Select(node => (node.GetType(), node.Span)));
            Assert.Equal(first.Findings.Select(finding => (finding.Message, finding.Primary)), second.Findings.Select(finding => (finding.Message, finding.Primary)));
        });
    }

    [Fact]
    public void A_text_that_is_not_read_to_its_end_says_so()
    {
        AnyText.Any.Sample(
            content =>
        {
            var tree = Sample.Parse(content);
            if (tree.Findings.IsEmpty)
            {
                var covered = tree.Root.Children.ToList();
                Assert.All(Sample.Words(tree), token => Assert.Contains(covered, node => node.Span.Start <= token.Span.Start && token.Span.End <= node.Span.End));
            }
        });
    }

    internal static void AssertInOrder(SyntaxNode node)
    {
        var position = node.Span.Start;
        foreach (var child in node.Children)
        {
            Assert.True(child.Span.Start >= position, $"{child} in {node}");
            Assert.True(child.Span.End <= node.Span.End, $"{child} in {node}");
            position = Math.Max(position, child.Span.Start);
            AssertInOrder(child);
        }
    }

    private static void AssertWithin(TextSpan span, string content)
    {
        Assert.InRange(span.Start, 0, content.Length);
        Assert.InRange(span.End, span.Start, content.Length);
    }
}
