using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Messages;

namespace ProcScript.Analysis.Tests.Messages;

/// <summary>The message files of all languages say the same things, and say all of them.</summary>
public class MessageFileTests
{
    private static readonly string[] Few = ["few", "many", "one", "other"];

    private static readonly Wordbook English = Wordbook.English;

    public static TheoryData<PackLanguage> Languages => [.. PackLanguages.All];

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_language_has_every_message_and_no_other(PackLanguage language) => Assert.Equal(English.Keys, Wordbook.In(language).Keys);

    [Theory]
    [MemberData(nameof(Languages))]
    public void A_message_takes_the_same_arguments_in_every_language(PackLanguage language) =>
        Assert.All(English.Keys, key => Assert.True(
            English.Message(key).Arguments.SequenceEqual(Wordbook.In(language).Message(key).Arguments),
            $"{key} in {language.Tag()}: {string.Join(", ", Wordbook.In(language).Message(key).Arguments)}"));

    [Fact]
    public void A_Polish_plural_that_shows_its_number_has_every_form_of_the_language() =>
        Assert.All(English.Keys.Where(key => Written(PackLanguage.Polish, key) is var text && text.Contains('#') && text.Contains("plural", StringComparison.Ordinal)), key => Assert.All(
            Wordbook.In(PackLanguage.Polish).Message(key).PluralForms,
            forms => Assert.Superset(Few.ToHashSet(), forms.ToHashSet())));

    [Fact]
    public void No_message_is_left_in_English_by_mistake()
    {
        // Words that are spelt alike, and messages that are nothing but arguments.
        var alike = English.Keys.Where(key => PackLanguages.All.Skip(1).All(language => Written(language, key) == Written(PackLanguage.English, key))).ToHashSet();

        Assert.All(alike, key => Assert.DoesNotMatch("[a-z]{3}", System.Text.RegularExpressions.Regex.Replace(Written(PackLanguage.English, key), @"\{[^}]*\}|</?b>", "")));
    }

    [Fact]
    public void Every_message_is_used()
    {
        var (keys, beginnings) = MessageFiles.Named();

        Assert.Empty(English.Keys.Where(key => !keys.Contains(key) && !beginnings.Any(start => key.StartsWith(start, StringComparison.Ordinal))));
    }

    [Fact]
    public void Every_verb_has_its_phrase() => Assert.All(ActionTable.Rows, row => Assert.True(English.Has($"verb.{row.Word}"), row.Word));

    [Theory]
    [InlineData(1, "1 sztuka")]
    [InlineData(3, "3 sztuki")]
    [InlineData(5, "5 sztuk")]
    [InlineData(13, "13 sztuk")]
    [InlineData(22, "22 sztuki")]
    public void Polish_counts_with_its_own_forms(int count, string words) =>
        Assert.Equal(words, Wordbook.In(PackLanguage.Polish).Say("amount.pieces", ("amount", count), ("count", count)));

    private static string Written(PackLanguage language, string key)
    {
        using var document = System.Text.Json.JsonDocument.Parse(File.ReadAllText(
            Path.Combine(Checkout.Root, "src/ProcScript.Analysis/Messages", $"{language.Tag()}.json")));
        return document.RootElement.GetProperty(key).GetString()!;
    }
}
