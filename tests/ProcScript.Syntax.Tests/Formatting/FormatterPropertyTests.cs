using CsCheck;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Syntax.Tests.Formatting;

/// <summary>What holds of every layout, however the author has laid the file out.</summary>
public sealed class FormatterPropertyTests
{
    private const int Times = 100;

    private static readonly Gen<string> AnySample = Gen.Int[0, Sample.All.Count - 1].Select(index => Sample.All[index]);

    /// <summary>A sample with other blanks, line breaks and comments between its words.</summary>
    private static readonly Gen<string> Scattered = Scatter([" ", "  ", "\t", "\n", "\n\n", "\n\n\n   ", " // note  \n", "\n  // line\n\n"]);

    [Fact]
    public void A_second_layout_changes_nothing() => Scattered.Sample(
        content =>
        {
            var once = Formatter.Format(Sample.Parse(content));
            Assert.NotNull(once);
            Assert.Equal(once, Formatter.Format(Sample.Parse(once)));
        },
        iter: Times);

    [Fact]
    public void Every_word_and_every_comment_stays_in_its_order() => Scattered.Sample(
        content => Assert.Equal(Words(content), Words(Formatter.Format(Sample.Parse(content))!)),
        iter: Times);

    [Fact]
    public void The_tree_stays_but_for_the_places() => Scattered.Sample(
        content => Assert.Equal(Shape(content), Shape(Formatter.Format(Sample.Parse(content))!)),
        iter: Times);

    [Fact]
    public void Blanks_within_the_lines_make_no_difference() => Gen.Select(AnySample, Gen.Int).Sample(
        (content, seed) =>
        {
            var other = Spread(content, [" ", "   ", "\t"], keepsLines: true, new Random(seed));
            Assert.Equal(Formatter.Format(Sample.Parse(content)), Formatter.Format(Sample.Parse(other)));
        },
        iter: Times);

    [Fact]
    public void No_line_ends_in_a_blank_and_no_two_are_empty() => Scattered.Sample(
        content =>
        {
            var lines = Formatter.Format(Sample.Parse(content))!.Split('\n');
            Assert.DoesNotContain(lines, line => line.Length > 0 && char.IsWhiteSpace(line[^1]));
            Assert.DoesNotContain(lines.Zip(lines.Skip(1)).SkipLast(1), pair => pair is ("", ""));
            Assert.Equal("", lines[^1]);
        },
        iter: Times);

    [Fact]
    public void A_range_changes_blanks_that_touch_it_and_all_of_them_together_are_the_layout() => Gen.Select(Scattered, Gen.Int[0, 100]).Sample(
        (content, share) =>
        {
            var tree = Sample.Parse(content);
            var cut = content.Length * share / 100;
            var (head, tail) = (new TextSpan(0, cut), TextSpan.FromBounds(cut, content.Length));
            var all = Formatter.Edits(tree)!.Value;
            var first = Formatter.Edits(tree, head)!.Value;
            var second = Formatter.Edits(tree, tail)!.Value;

            Assert.All(first, edit => Assert.True(edit.Place.Span.Start <= cut));
            Assert.All(second, edit => Assert.True(edit.Place.Span.End >= cut));
            Assert.Equal(all, first.Union(second).OrderBy(edit => edit.Place.Span.Start));
        },
        iter: Times);

    private static Gen<string> Scatter(string[] blanks) =>
        Gen.Select(AnySample, Gen.Int).Select((content, seed) => Spread(content, blanks, keepsLines: false, new Random(seed)));

    private static string Spread(string content, string[] blanks, bool keepsLines, Random random)
    {
        var spread = new System.Text.StringBuilder();
        var tokens = Sample.Parse(content).Tokens;
        for (var i = 0; i < tokens.Length; i++)
        {
            var text = content.Substring(tokens[i].Span.Start, tokens[i].Span.Length);
            var isBlank = tokens[i].Category == TokenCategory.WhiteSpace || (!keepsLines && tokens[i].Category == TokenCategory.LineBreak);
            var endsComment = i > 0 && tokens[i - 1].Category == TokenCategory.Comment;
            spread.Append(isBlank && !endsComment && random.Next(3) == 0 ? blanks[random.Next(blanks.Length)] : text);
        }

        return spread.ToString();
    }

    private static List<string> Words(string content) =>
        [.. Sample.Words(Sample.Parse(content)).Concat(Comments(content)).OrderBy(token => token.Span.Start)
            .Select(token => content.Substring(token.Span.Start, token.Span.Length).TrimEnd())];

    private static IEnumerable<SyntaxToken> Comments(string content) =>
        Sample.Parse(content).Tokens.Where(token => token.Category == TokenCategory.Comment);

    private static List<string> Shape(string content)
    {
        var tree = Sample.Parse(content);
        Assert.Empty(tree.Findings);
        return [.. tree.Root.DescendantsAndSelf().Select(node => node is WordSyntax word ? word.Text : node.GetType().Name)];
    }
}
