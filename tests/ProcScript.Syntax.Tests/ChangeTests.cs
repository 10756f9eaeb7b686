using CsCheck;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Tests;

/// <summary>A text that is parsed again after a change.</summary>
public sealed class ChangeTests
{
    private static readonly string[] Scraps =
    [
        "", "", "x", " ", "\n", "\r\n", "{", "}", "\"", "// note\n", "// proc: allow PRC1001 because \"x\"\n", "tool spanner\n", "\ntool spanner \"a spanner\" { size 13 mm }\n",
        "use \"a.proc\"\n", "\nprocedure p on m {\n}\n", "é", "\uD83D\uDD27", "\uFFFD", "\0", "undo ", "[left]", "stage \"x\" {", ";", "procedure ", "\nmachine",
    ];

    private static readonly Gen<(int Place, int Length, string Scrap)[]> Edits =
        Gen.Select(Gen.Int[0, 1_000_000], Gen.OneOf<int>(0, 0, 1, 3, 30), Gen.OneOf<string>(Scraps)).Array[1, 12];

    [Fact]
    public void The_tree_after_a_change_is_that_of_a_fresh_parse() => Gen.Select(Gen.OneOf<string>(Sample.All.ToArray()), Edits).Sample((content, edits) =>
    {
        var layout = SlackLayout.Of(content);
        var tree = SyntaxTree.Parse(layout.ToText("a.proc"));
        foreach (var written in Versions(content, edits))
        {
            layout = layout.With(written);
            tree = tree.With(layout.ToText("a.proc"), TestContext.Current.CancellationToken);
            Assert.Equal(written, tree.Text.Written);
            Assert.Equal(Describe(SyntaxTree.Parse(layout.ToText("a.proc"), TestContext.Current.CancellationToken), places: true), Describe(tree, places: true));
        }
    });

    [Fact]
    public void Room_behind_declarations_changes_nothing_but_offsets() => Gen.OneOf(AnyText.Any, Gen.OneOf<string>(Sample.All.ToArray())).Sample(written =>
        Assert.Equal(Describe(SyntaxTree.Parse(new SourceText("a.proc", written)), places: false), Describe(SyntaxTree.Parse(SlackLayout.Of(written).ToText("a.proc")), places: false)));

    /// <summary>A text without its opening quote may take in all up to the next lone quote.</summary>
    [Fact]
    public void Room_in_what_a_text_took_in_by_mistake_is_no_part_of_it()
    {
        const string written = "use inlet\" bond (in with) on uses {\neach clip in 1 .. 2 {\nwork {\n}\ntool store [1] each energy in 1 .. 2 {\n}\n}\n}\nline drive gap.\" {\n}\nshroud\n";

        Assert.Equal(Describe(Sample.Parse(written), places: false), Describe(SyntaxTree.Parse(SlackLayout.Of(written).ToText("a.proc"), TestContext.Current.CancellationToken), places: false));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_change_within_a_declaration_leaves_the_others_the_same_nodes(int fromEnd)
    {
        var content = Sample.Everything;
        var layout = SlackLayout.Of(content);
        var before = SyntaxTree.Parse(layout.ToText("a.proc"), TestContext.Current.CancellationToken);
        var edited = before.Root.Declarations[^fromEnd];
        var place = content.IndexOf(before.Text.Content.Substring(edited.Span.Start, 20), StringComparison.Ordinal);
        var after = before.With(layout.With(content.Insert(content.IndexOf('{', place) + 1, " // a note\n\n")).ToText("a.proc"), TestContext.Current.CancellationToken);

        Assert.Equal(before.Root.Declarations.Length, after.Root.Declarations.Length);
        var same = before.Root.Declarations.Zip(after.Root.Declarations, ReferenceEquals).ToArray();
        Assert.Equal(Enumerable.Range(0, same.Length).Select(index => index != same.Length - fromEnd), same);
    }

    private static IEnumerable<string> Versions(string content, (int Place, int Length, string Scrap)[] edits)
    {
        foreach (var (place, length, scrap) in edits)
        {
            var start = place % (content.Length + 1);
            content = content.Remove(start, Math.Min(length, content.Length - start)).Insert(start, scrap);
            yield return content;
        }
    }

    private static string Describe(SyntaxTree tree, bool places)
    {
        return string.Join(
        '\n',
        tree.Root.DescendantsAndSelf().Select(node => $"{node.GetType().Name} {Place(node.Span)} {(node as WordSyntax)?.Text}{(node as TextSyntax)?.Value}")
            .Concat(tree.Findings.Select(finding => $"{finding.Rule.Code} {Place(finding.Primary.Span)} {finding.Message} {finding.Label} {finding.Help} "
                + string.Join(' ', finding.Related.Select(one => $"{Place(one.Place.Span)} {one.Label}"))
                + string.Join(' ', finding.Fixes.SelectMany(fix => fix.Edits).Select(edit => $"{Place(edit.Place.Span)} {edit.NewText}"))))
            .Concat(tree.Suppressions.Select(one => $"{Place(one.Span)} {Place(one.RuleSpan)} {one.Rule} {one.Reason} {one.TargetLine}")));

        string Place(TextSpan span) => places ? span.ToString() : $"{tree.Text.PositionAt(span.Start)}-{tree.Text.PositionAt(span.End)}";
    }
}
