using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Syntax.Tests;

public sealed class PlaceTests
{
    [Fact]
    public void Spans_count_utf_16_units()
    {
        const string Content = "// \U0001F527 é\nfastener a \"×\U0001F527\" { torque 22 ± 2 N·m }";
        var tree = Sample.Parse(Content);

        Assert.Equal("torque 22 ± 2 N·m", tree.Text.Slice(tree.Only<TorquePropertySyntax>().Span));
        Assert.Equal("22 ± 2 N·m", tree.Text.Slice(tree.Only<QuantitySyntax>().Span));
        Assert.Equal("N·m", tree.Text.Slice(tree.Only<UnitSyntax>().Span));
        Assert.Equal("N.m", tree.Only<UnitSyntax>().Text);
        Assert.Equal("\"×\U0001F527\"", tree.Text.Slice(tree.Only<CatalogSyntax>().Title!.Span));
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Any_line_break_ends_a_line(string lineBreak)
    {
        var tree = Sample.Parse($"tool a // note{lineBreak}tool b \"open{lineBreak}tool c");

        Assert.Equal(["a", "b", "c"], tree.Root.Declarations.Select(declaration => declaration.Name.Text));
        Assert.Equal([0, 1, 2], tree.Root.Declarations.Select(declaration => tree.Text.LineAt(declaration.Span.Start)));
        Assert.Equal(["PRC1003"], tree.Findings.Select(finding => finding.Rule.Code));
        Assert.Equal(2, tree.Tokens.Count(token => token.Category == TokenCategory.LineBreak));
    }

    [Fact]
    public void A_byte_order_mark_is_a_blank()
    {
        var tree = Sample.Parse("\uFEFFtool a");

        Assert.Empty(tree.Findings);
        Assert.Equal(new TextSpan(1, 6), tree.Root.Declarations[0].Span);
        Assert.Equal(TokenCategory.WhiteSpace, tree.Tokens[0].Category);
    }

    [Fact]
    public void A_missing_word_is_empty_and_stands_where_it_belongs()
    {
        var tree = Sample.Parse("machine m {\n  part \"seat\"\n  held by m8 as bolts\n}");
        var part = tree.Only<PartSyntax>();
        var count = tree.Only<CountSyntax>();

        Assert.True(part.Name.Name.IsMissing);
        Assert.Equal(new TextSpan(18, 0), part.Name.Span);
        Assert.Equal(0, count.Value);
        Assert.Equal(0, count.Span.Length);
        Assert.Equal("seat", part.Title?.Value);
    }

    [Fact]
    public void An_empty_file_has_an_empty_tree()
    {
        var tree = Sample.Parse("");

        Assert.Empty(tree.Findings);
        Assert.Empty(tree.Tokens);
        Assert.Empty(tree.Root.Children);
    }

    [Fact]
    public void The_text_of_a_node_with_an_index_is_all_of_it()
    {
        var tree = Sample.Parse("machine m { part trim [ left , 2 ] }");

        Assert.Equal("trim [ left , 2 ]", tree.Text.Slice(tree.Only<ReferenceSyntax>().Span));
        Assert.Equal(["left", "2"], tree.Only<ReferenceSyntax>().Indices.Select(index => index.Text));
    }
}
