using System.Text.RegularExpressions;
using ProcScript.Model.Quantities;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Demo;

/// <summary>The demo library shows the whole language: what it does not use, nobody sees in use.</summary>
public sealed partial class DemoCoverageTests
{
    private static readonly string[] UnitFamilies =
    [
        "N.m", "lbf.ft", "lbf.in", "kgf.m", "mm", "in", "kg", "lb", "oz", "L", "mL", "gal", "fl.oz",
        "kPa", "bar", "psi", "°C", "°F", "s", "min", "h", "V", "%", "L/min",
    ];

    private static IReadOnlyList<SyntaxNode> Nodes { get; } =
    [
        .. DemoLibrary.Files
            .Select(file => SyntaxTree.Parse(new SourceText(file.Key, file.Value)).Root)
            .SelectMany(root => root.DescendantsAndSelf()),
    ];

    [Fact]
    public void Every_word_of_the_language_occurs()
    {
        var lexer = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "grammar", "ProcScriptLexer.g4"));
        var words = Keyword().Matches(lexer).Select(match => match.Groups["word"].Value).ToList();
        var used = DemoLibrary.Files.Values
            .SelectMany(text => Word().Matches(TextOrComment().Replace(text, " ")).Select(match => match.Value))
            .ToHashSet(StringComparer.Ordinal);

        Assert.True(words.Count > 100, $"{words.Count} words in the lexer");
        Assert.Empty(words.Except(used));
    }

    [Fact]
    public void Every_sort_of_sentence_occurs()
    {
        var used = Nodes.Select(node => node.GetType()).ToHashSet();
        var sorts = typeof(SyntaxNode).Assembly.GetExportedTypes().Where(type => type.IsSubclassOf(typeof(SyntaxNode)) && !type.IsAbstract);

        // A step that says what its joint is made of is a draft, and no finished library has one.
        Assert.Equal([nameof(PiecesSyntax)], sorts.Except(used).Select(sort => sort.Name));
    }

    [Fact]
    public void Every_verb_of_the_refit_stands_in_a_rule()
    {
        var named = Nodes.OfType<OrderRuleSyntax>().SelectMany(rule => rule.DescendantsAndSelf())
            .Concat(Nodes.OfType<OpenRuleSyntax>().Select(rule => rule.Verb))
            .Concat(Nodes.OfType<CheckRuleSyntax>().SelectMany(rule => rule.DescendantsAndSelf()))
            .Concat(Nodes.OfType<TestRuleSyntax>().SelectMany(rule => rule.Order?.DescendantsAndSelf() ?? []))
            .OfType<WordSyntax>()
            .Select(word => word.Text)
            .ToHashSet(StringComparer.Ordinal);

        string[] verbs = ["fasten", "tighten", "engage", "plug", "connect", "renew", "return", "fit", "set", "restore", "fill", "unsupport"];
        Assert.Empty(verbs.Except(named));
    }

    [Fact]
    public void Every_form_of_a_figure_occurs()
    {
        var forms = Nodes.OfType<QuantitySyntax>().Select(quantity => quantity.Form).ToHashSet();
        Assert.Empty(Enum.GetValues<QuantityForm>().Except(forms));

        var relations = Nodes.OfType<LimitSyntax>().Select(limit => limit.Relation).ToHashSet();
        Assert.Empty(Enum.GetValues<LimitRelation>().Except(relations));

        var texts = string.Join('\n', DemoLibrary.Files.Values);
        Assert.All(["1 1/4 in", "7/16 in", "-1.0 ..", "+-", "±"], form => Assert.Contains(form, texts, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_family_of_units_occurs()
    {
        var used = Nodes.OfType<UnitSyntax>().Select(unit => unit.Text.Replace('·', '.')).ToHashSet(StringComparer.Ordinal);

        Assert.All(UnitFamilies, spelling => Assert.NotNull(Units.Find(spelling)));
        Assert.Empty(UnitFamilies.Except(used));
    }

    [GeneratedRegex(@"^[A-Z_]+\s*: '(?<word>[a-z]+)' ;", RegexOptions.Multiline)]
    private static partial Regex Keyword();

    [GeneratedRegex(@"[\p{L}_][\p{L}\p{N}_]*")]
    private static partial Regex Word();

    [GeneratedRegex("""
        "(\\.|[^"\\\r\n])*"|//[^\r\n]*
        """)]
    private static partial Regex TextOrComment();
}
