using System.Text;
using System.Text.RegularExpressions;
using ProcScript.Cards.Templating;

namespace ProcScript.Cards.Tests.Templates;

/// <summary>Templates say nothing by themselves: every word of a pack stands among the messages, in every language.</summary>
public sealed partial class TemplateWordsTests
{
    public static TheoryData<string> Pages => [.. StandardFiles.Names.Where(name => name.EndsWith(".html", StringComparison.Ordinal) || name.EndsWith(".md", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_template_has_no_words_of_its_own(string name)
    {
        var text = WithoutCode(StandardFiles.Read()[name]);
        var said = SaidByAttributes().Matches(text).Select(match => match.Groups[1].Value).Append(Tags().Replace(text, " "));

        Assert.All(said, words => Assert.DoesNotMatch("[A-Za-z]{2,}", Entities().Replace(words, "")));
    }

    [Theory]
    [InlineData("words.js")]
    [InlineData("pack.js")]
    [InlineData("search.js")]
    [InlineData("photos.js")]
    public void A_script_has_no_sentences_of_its_own(string name) =>
        Assert.DoesNotMatch("""["`][^"`\n]*[A-Za-z]{2,} [a-z]{2,} [a-z]{2,}[^"`\n]*["`]""", Selectors().Replace(Comments().Replace(StandardFiles.Read()[name], ""), ""));

    [Fact]
    public void Words_in_a_template_are_found()
    {
        Assert.Matches("[A-Za-z]{2,}", Tags().Replace(WithoutCode("<p>Wait until {{ if a }}{{ say 'x' { y: (z) } }}{{ end }}</p>"), " "));
        Assert.DoesNotMatch("[A-Za-z]{2,}", Tags().Replace(WithoutCode("<p>{{ if a }}{{ say 'x' { y: (z) } }}{{ end }}</p>"), " "));
    }

    /// <summary>A template without what it works out; braces within that are those of objects.</summary>
    private static string WithoutCode(string template)
    {
        var text = new StringBuilder();
        var at = 0;
        while (at < template.Length)
        {
            if (string.CompareOrdinal(template, at, "{{", 0, 2) != 0)
            {
                text.Append(template[at++]);
                continue;
            }

            var depth = 0;
            for (at += 2; at < template.Length && !(depth == 0 && string.CompareOrdinal(template, at, "}}", 0, 2) == 0); at++)
            {
                depth += template[at] switch { '{' => 1, '}' => -1, _ => 0 };
            }

            at += 2;
        }

        return text.ToString();
    }

    [GeneratedRegex("(?:aria-label|title|data-head|alt|placeholder)=\"([^\"]*)\"", RegexOptions.CultureInvariant)]
    private static partial Regex SaidByAttributes();

    [GeneratedRegex("<[^>]*>", RegexOptions.CultureInvariant)]
    private static partial Regex Tags();

    [GeneratedRegex("&\\w+;", RegexOptions.CultureInvariant)]
    private static partial Regex Entities();

    [GeneratedRegex("//[^\\n]*|\"use strict\"", RegexOptions.CultureInvariant)]
    private static partial Regex Comments();

    [GeneratedRegex("querySelector(All)?\\([^)]*\\)|`\\.[^`]*`|\"procscript [^\"]*\"|\"\\.[^\"]*\"", RegexOptions.CultureInvariant)]
    private static partial Regex Selectors();
}
