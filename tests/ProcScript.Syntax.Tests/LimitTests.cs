using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Tests;

public sealed class LimitTests
{
    private const int Largest = 16 * 1024 * 1024;

    [Fact]
    public void A_file_beyond_the_limit_is_not_read()
    {
        var tree = Sample.Parse(new string(' ', Largest) + "\n");

        Assert.Equal(["PRC1007"], Codes(tree));
        Assert.Empty(tree.Root.Children);
        Assert.Equal(Largest + 1, tree.Tokens[^1].Span.End);
    }

    [Fact]
    public void A_file_at_the_limit_is_read()
    {
        Assert.Empty(Sample.Parse("tool t" + new string(' ', Largest - 6)).Findings);
    }

    [Theory]
    [InlineData(2_000_000, false)]
    [InlineData(2_000_001, true)]
    public void A_file_may_have_so_many_words(int words, bool isTooLarge)
    {
        // Commas are passed over at once, so that this tells nothing but the limit.
        var tree = Sample.Parse("tool t" + new string(',', words - 2));

        Assert.Equal([isTooLarge ? "PRC1007" : "PRC1001"], Codes(tree));
        Assert.Equal(isTooLarge ? 0 : 1, tree.Root.Declarations.Length);
    }

    [Theory]
    [InlineData(64, false)]
    [InlineData(65, true)]
    [InlineData(10_000, true)]
    public void Blocks_may_stand_within_each_other_so_far(int depth, bool isTooDeep)
    {
        var open = string.Concat(Enumerable.Repeat("part p {\n", depth - 1));
        var tree = Sample.Parse($"machine m {{\n{open}{new string('}', depth)}\ntool last");

        Assert.Equal(isTooDeep ? ["PRC1006"] : [], Codes(tree));
        Assert.Equal(Math.Min(depth - 1, 64), tree.Root.DescendantsAndSelf().OfType<PartSyntax>().Count());
        Assert.Equal("last", tree.Root.Declarations[^1].Name.Text);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("}")]
    [InlineData("machine m { part p { ")]
    [InlineData("covered by 1 a as b ")]
    [InlineData("[")]
    [InlineData("(")]
    [InlineData("not ")]
    [InlineData("in in ")]
    [InlineData("\"\n")]
    [InlineData("1 ")]
    [InlineData("- ")]
    [InlineData("undo ")]
    [InlineData("}\n{\n")]
    [InlineData("a\n b\n}\n")]
    [InlineData("±°€“")]
    public void The_same_again_and_again_gives_a_few_findings(string text)
    {
        var tree = Sample.Parse(string.Concat(Enumerable.Repeat(text, 10_000)));

        Assert.InRange(tree.Findings.Length, 1, 102);
    }

    [Fact]
    public void Findings_beyond_the_hundredth_are_counted()
    {
        var tree = Sample.Parse(string.Concat(Enumerable.Repeat("tool t;\n", 150)));

        Assert.Equal(101, tree.Findings.Length);
        Assert.Equal("50 more findings of this file are not listed", tree.Findings[^1].Message);
    }

    [Fact]
    public void A_file_that_is_no_ProcScript_is_given_up_with_a_word()
    {
        var tree = Sample.Parse(string.Concat(Enumerable.Repeat("tool t {\n  x y\n}\n", 2_000)));

        Assert.Contains(
            tree.Findings, finding => finding.Message.StartsWith("the file is not read from here on", StringComparison.Ordinal));
        Assert.InRange(tree.Findings.Length, 1, 102);
    }

    [Theory]
    [InlineData("tool \0t", "PRC1008", 0)]
    [InlineData("tool t \"a\uD800b\"", "PRC1008", 1)]
    [InlineData("tool t \"\uDC00\uD83D\" // \uD800", "PRC1008", 1)]
    [InlineData("tool t \uD800 \uDC00 ", "PRC1008", 1)]
    [InlineData("tool t \"\uFFFD\"", "PRC1008", 1)]
    public void What_is_not_text_is_said_once(string content, string code, int declarations)
    {
        var tree = Sample.Parse(content);

        Assert.Equal([code], Codes(tree));
        Assert.Equal(declarations, tree.Root.Declarations.Length);
    }

    [Fact]
    public void Characters_beyond_the_first_plane_are_text_in_a_text()
    {
        var tree = Sample.Parse("tool t \"\U0001F527 wrench\" tool u");

        Assert.Empty(tree.Findings);
        Assert.Equal("\U0001F527 wrench", tree.Root.Declarations[0].Title?.Value);
        Assert.Equal(new TextSpan(19, 6), tree.Root.Declarations[1].Span);
    }

    [Theory]
    [InlineData("held by 1000001 a as b", "a count may be at most 1000000")]
    [InlineData("mass 1000000000000000 kg", "a number may have at most 15 digits before its point")]
    [InlineData("each n in 1 .. 1001 { }", "a range may hold at most 1000 values")]
    public void A_number_that_is_too_large_is_said_to_be(string member, string message)
    {
        Assert.Equal([message], Sample.Parse($"machine m {{ {member} }}").Findings.Select(finding => finding.Message));
    }

    [Fact]
    public void A_number_of_a_million_digits_is_read_in_no_time()
    {
        var tree = Sample.Parse($"machine m {{ mass {new string('7', 1_000_000)} kg  mass 0.{new string('1', 1_000_000)} kg }}");

        Assert.Equal(["PRC1009"], Codes(tree));
    }

    [Fact]
    public void A_cancelled_parse_ends()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();

        Assert.ThrowsAny<OperationCanceledException>(() => SyntaxTree.Parse(new SourceText("a.proc", "tool t"), source.Token));
    }

    [Fact]
    public void Deep_blocks_need_no_large_stack()
    {
        var content = "machine m { " + string.Concat(Enumerable.Repeat("part p { ", 10_000));
        SyntaxTree? tree = null;
        var thread = new Thread(() => tree = SyntaxTree.Parse(new SourceText("a.proc", content)), maxStackSize: 256 * 1024);
        thread.Start();
        thread.Join();

        Assert.NotEmpty(tree!.Findings);
    }

    private static IEnumerable<string> Codes(SyntaxTree tree) => tree.Findings.Select(finding => finding.Rule.Code);
}
