using System.Text.RegularExpressions;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Tests.Reference;

/// <summary>The reference leaves no word and no unit out.</summary>
public sealed partial class ReferenceWordsTests
{
    private static readonly HashSet<string> Spans =
        [.. CodeSpan().Matches(ReferenceExample.Language).SelectMany(match => match.Groups["code"].Value.Split(' ', ',', '\n'))];

    [Fact]
    public void Every_word_of_the_language_is_explained()
    {
        var lexer = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "grammar", "ProcScriptLexer.g4"));

        Assert.Empty(Keyword().Matches(lexer).Select(match => match.Groups["word"].Value).Except(Spans));
    }

    [Fact]
    public void Every_word_of_the_language_stands_in_an_example_that_is_right()
    {
        var lexer = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "grammar", "ProcScriptLexer.g4"));
        HashSet<string> shown =
        [
            .. ReferenceExample.All
                .Where(example => example is { Page: "LANGUAGE.md", Expected: "" })
                .SelectMany(example => example.Files.Values)
                .SelectMany(file => Word().Matches(Aside().Replace(file, "")).Select(match => match.Value)),
        ];

        Assert.Empty(Keyword().Matches(lexer).Select(match => match.Groups["word"].Value).Except(shown));
    }

    [Fact]
    public void Every_unit_is_listed() =>
        Assert.Empty(Units.All.Where(unit => unit.Symbol.Length > 0).Select(Units.SpellingOf).Except(Spans));

    [GeneratedRegex(@"^[A-Z_]+\s*: '(?<word>[a-z]+)' ;", RegexOptions.Multiline)]
    private static partial Regex Keyword();

    [GeneratedRegex("\"[^\"\n]*\"|//.*")]
    private static partial Regex Aside();

    [GeneratedRegex(@"(?<!\w)[a-z]+(?!\w)")]
    private static partial Regex Word();

    [GeneratedRegex("(?<!`)`(?<code>[^`\n]+)`(?!`)")]
    private static partial Regex CodeSpan();
}
