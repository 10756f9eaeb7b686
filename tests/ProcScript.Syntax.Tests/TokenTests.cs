using ProcScript.Syntax.Generated;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Syntax.Tests;

public sealed class TokenTests
{
    [Fact]
    public void A_token_has_its_category()
    {
        var tree = Sample.Parse("tool seat \"t\" 2.5±\t// note\r\n€");

        Assert.Equal(
            [
                TokenCategory.Keyword, TokenCategory.WhiteSpace, TokenCategory.Name, TokenCategory.WhiteSpace, TokenCategory.Text,
                TokenCategory.WhiteSpace, TokenCategory.Number, TokenCategory.Punctuation, TokenCategory.WhiteSpace, TokenCategory.Comment,
                TokenCategory.LineBreak, TokenCategory.Unknown,
            ],
            tree.Tokens.Select(token => token.Category));
    }

    [Theory]
    [InlineData("±", "+-")]
    [InlineData("°", null)]
    [InlineData("·", null)]
    [InlineData("⋅", "·")]
    [InlineData("−", "-")]
    [InlineData("≤", "<=")]
    [InlineData("≥", ">=")]
    public void A_sign_beyond_ascii_is_one_token_and_the_same_as_its_plain_spelling(string sign, string? plain)
    {
        var kind = new TokenReader(sign).Read();

        Assert.NotEqual(ProcScriptLexer.UNKNOWN, kind);
        Assert.Equal(plain is null ? kind : new TokenReader(plain).Read(), kind);
        Assert.Equal([sign], Words($"{sign}"));
        Assert.Equal(["a", sign, "b"], Words($"a{sign}b"));
    }

    [Theory]
    [InlineData("mm²", "mm²")]
    [InlineData("größe", "größe")]
    [InlineData("часть_1", "часть_1")]
    [InlineData("座席", "座席")]
    [InlineData("5mm", "5", "mm")]
    [InlineData("M8x1.25", "M8x1", ".", "25")]
    [InlineData("0.5..2.0", "0.5", "..", "2.0")]
    [InlineData("a-b", "a", "-", "b")]
    [InlineData("\"a\\\"b\"c", "\"a\\\"b\"", "c")]
    [InlineData("\"a “b” c\"", "\"a “b” c\"")]
    [InlineData("“a”b", "“a”", "b")]
    [InlineData("a//b", "a")]
    public void A_text_falls_into_words(string content, params string[] words)
    {
        Assert.Equal(words, Words(content));
    }

    [Theory]
    [InlineData("\"a \\\"b\\\" c\"", "a \"b\" c")]
    [InlineData("\"a\\\\\"", "a\\")]
    [InlineData("\"a\\nb\"", "a\nb")]
    [InlineData("\"A\\B\"", "A\\B")]
    [InlineData("\"\"", "")]
    [InlineData("“a”", "a")]
    [InlineData("\"a", "a")]
    [InlineData("\"a\\", "a\\")]
    [InlineData("\"a\\\"", "a\"")]
    public void The_value_of_a_text_is_what_was_meant(string written, string meant)
    {
        Assert.Equal(meant, Sample.Parse($"tool t {written}").Root.Declarations[0].Title?.Value);
    }

    [Theory]
    [InlineData("25", 25)]
    [InlineData("-2.5", -2.5)]
    [InlineData("3/8", 0.375)]
    [InlineData("1 3/8", 1.375)]
    [InlineData("−1/2", -0.5)]
    [InlineData("1/0", 0)]
    public void A_number_has_its_value(string written, double value)
    {
        Assert.Equal(value, Sample.Parse($"machine m {{ mass {written} kg }}").Only<Nodes.NumberSyntax>().Value);
    }

    private static IEnumerable<string> Words(string content)
    {
        var tree = Sample.Parse(content);
        return Sample.Words(tree).Select(token => tree.Text.Slice(token.Span));
    }
}
