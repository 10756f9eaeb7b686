using CsCheck;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Tests;

public sealed class AnyTextTests
{
    private const int Times = 500;

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
        }, iter: Times);
    }

    [Fact]
    public void Findings_of_any_text_are_few_in_order_and_within_it()
    {
        AnyText.Any.Sample(
            content =>
        {
            var findings = Sample.Parse(content).Findings;

            Assert.InRange(findings.Length, 0, 102);
            var starts = findings.Select(finding => finding.Primary.Span.Start).ToList();
            Assert.Equal(starts.Order(), starts);
            Assert.All(findings, finding =>
            {
                AssertWithin(finding.Primary.Span, content);
                Assert.All(finding.Related, related => AssertWithin(related.Place.Span, content));
                Assert.All(finding.Fixes.SelectMany(fix => fix.Edits), edit => AssertWithin(edit.Place.Span, content));
                Assert.NotEmpty(finding.Message);
            });
        }, iter: Times);
    }

    [Fact]
    public void The_nodes_of_any_text_lie_within_each_other_and_in_order()
    {
        AnyText.Any.Sample(
            content => AssertInOrder(Sample.Parse(content).Root));
    }

    [Theory]
    [InlineData("solar fastener \"bolt\" { }")]
    [InlineData("machine m \"M\" { a part \"A\" { held by bolt 2 } }")]
    [InlineData("procedure p \"P\" m on { stage \"S\" { a undo  loosen b } }")]
    public void Words_that_have_changed_places_lie_within_their_node_and_in_order(string content)
    {
        var tree = Sample.Parse(content);

        Assert.Contains(tree.Findings, finding => finding.Message.Contains("belongs before", StringComparison.Ordinal));
        AssertInOrder(tree.Root);
    }

    /// <summary>Where nothing is left of a sentence, the word that its reader stands at is the next one's.</summary>
    [Theory]
    [InlineData("}\nprocedure {efit{record\npause\"\n}")]
    public void A_sentence_of_no_word_takes_none_of_the_next_one(string content) => AssertInOrder(Sample.Parse(content).Root);

    /// <summary>Neighbours of a good text that change places, some of which the parser reads as they should stand.</summary>
    [Fact]
    public void The_nodes_of_a_text_whose_words_have_changed_places_lie_within_each_other_and_in_order()
    {
        var swapped = 0;
        Gen.Select(Gen.OneOf([.. Sample.All.Select(Gen.Const)]), Gen.Double.Unit).Sample(
            (content, share) =>
            {
                var words = Sample.Words(Sample.Parse(content)).Select(token => token.Span).ToList();
                var at = (int)(share * (words.Count - 1));
                if (at + 1 >= words.Count)
                {
                    return;
                }

                var (first, second) = (words[at], words[at + 1]);
                var tree = Sample.Parse(
                    content[..first.Start] + content[second.Start..second.End] + content[first.End..second.Start] + content[first.Start..first.End] + content[second.End..]);

                AssertInOrder(tree.Root);
                if (tree.Findings.Any(finding => finding.Message.Contains("belongs before", StringComparison.Ordinal)))
                {
                    Interlocked.Increment(ref swapped);
                }
            },
            iter: Depth.Of(800));
        Assert.True(swapped > Depth.Least(100), $"only {swapped} were read as they should stand");
    }

    [Fact]
    public void The_same_text_gives_the_same_tree_and_findings()
    {
        AnyText.Changed.Sample(
            content =>
        {
            var (first, second) = (Sample.Parse(content), Sample.Parse(content));

            Assert.Equal(Nodes(first), Nodes(second));
            Assert.Equal(Messages(first), Messages(second));
        }, iter: Times);
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
                var sentences = tree.Root.Children.Select(node => node.Span).ToList();
                Assert.All(
                    Sample.Words(tree).Select(token => token.Span),
                    word => Assert.Contains(sentences, sentence => sentence.Start <= word.Start && word.End <= sentence.End));
            }
        }, iter: Times);
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

    private static IEnumerable<(Type, TextSpan)> Nodes(SyntaxTree tree) =>
        tree.Root.DescendantsAndSelf().Select(node => (node.GetType(), node.Span));

    private static IEnumerable<(string, SourceSpan)> Messages(SyntaxTree tree) =>
        tree.Findings.Select(finding => (finding.Message, finding.Primary));

    private static void AssertWithin(TextSpan span, string content)
    {
        Assert.InRange(span.Start, 0, content.Length);
        Assert.InRange(span.End, span.Start, content.Length);
    }
}
