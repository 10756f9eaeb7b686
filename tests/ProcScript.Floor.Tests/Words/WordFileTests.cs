using System.Text.RegularExpressions;
using ProcScript.Analysis.Messages;
using ProcScript.Jobs.Journals;

namespace ProcScript.Floor.Tests.Words;

/// <summary>The page says the same in every language, and says all of it.</summary>
public sealed class WordFileTests
{
    private static readonly string[] Few = ["few", "many", "one", "other"];

    private static readonly IReadOnlyDictionary<string, string> English = PageWords.In(PackLanguage.English);

    public static TheoryData<PackLanguage> Languages => [.. PackLanguages.All];

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_language_has_every_message_with_the_same_arguments(PackLanguage language)
    {
        var words = PageWords.In(language);

        Assert.Equal(English.Keys, words.Keys);
        Assert.All(English, message => Assert.Equal((message.Key, string.Join(' ', IcuMessage.Parse(message.Value).Arguments)), (message.Key, string.Join(' ', IcuMessage.Parse(words[message.Key]).Arguments))));
    }

    [Fact]
    public void A_Polish_plural_has_every_form_of_the_language() =>
        Assert.All(PageWords.In(PackLanguage.Polish), message => Assert.All(IcuMessage.Parse(message.Value).PluralForms, forms => Assert.Superset(Few.ToHashSet(), forms.ToHashSet())));

    [Theory]
    [InlineData(PackLanguage.German)]
    [InlineData(PackLanguage.French)]
    [InlineData(PackLanguage.Spanish)]
    [InlineData(PackLanguage.Polish)]
    public void No_message_is_left_in_English_by_mistake(PackLanguage language)
    {
        // Words that are spelt alike.
        string[] alike = language switch
        {
            PackLanguage.German => ["name", "pair.code"],
            PackLanguage.French => ["note", "photo", "kind.photo", "kind.note", "word.danger", "step.photo", "pair.code", "foot.actions", "length.minutes"],
            _ => [],
        };
        var words = PageWords.In(language);

        Assert.Empty(English.Keys.Where(key => words[key] == English[key]).Except(alike));
    }

    [Fact]
    public void What_the_page_says_is_there_and_what_is_there_it_says()
    {
        var (keys, beginnings) = PageWords.Named();

        Assert.DoesNotContain(keys, key => !English.ContainsKey(key));
        Assert.All(beginnings, start => Assert.Contains(English.Keys, key => key.StartsWith(start, StringComparison.Ordinal)));
        Assert.DoesNotContain(English.Keys, key => !keys.Contains(key) && !beginnings.Any(start => key.StartsWith(start, StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_kind_of_event_that_is_told_has_its_word()
    {
        EventKind[] byTheProgram = [EventKind.Opened, EventKind.Replanned, EventKind.Rebased];

        Assert.All(Enum.GetValues<EventKind>().Except(byTheProgram), kind => Assert.Contains($"kind.{System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName($"{kind}")}", English.Keys));
    }

    [Fact]
    public void Every_fact_of_a_step_has_its_word()
    {
        var facts = File.ReadAllText(Path.Combine(Checkout.Root, "src", "ProcScript.Floor", "Documents", "PageCardsOf.cs"));
        var sorts = Regex.Matches(facts, """\("(?<sort>[a-z-]+)", (line|\[)""").Select(match => match.Groups["sort"].Value).ToList();

        Assert.True(sorts.Count > 10, $"{sorts.Count} facts were found");
        Assert.All(sorts, sort => Assert.Contains($"fact.{sort}", English.Keys));
    }
}
