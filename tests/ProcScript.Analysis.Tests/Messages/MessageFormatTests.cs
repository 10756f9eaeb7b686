using System.Text;
using System.Text.Json;
using ProcScript.Analysis.Messages;

namespace ProcScript.Analysis.Tests.Messages;

/// <summary>Our reader of ICU messages against what ICU itself makes of them; tests/outputs holds the two files to it.</summary>
public class MessageFormatTests
{
    [Fact]
    public void Numbers_have_the_plural_forms_that_ICU_gives_them()
    {
        using var table = JsonDocument.Parse(File.ReadAllText(Path.Combine(Checkout.Root, "tests/outputs/plurals.json")));
        foreach (var language in PackLanguages.All)
        {
            foreach (var form in table.RootElement.GetProperty(language.Tag()).EnumerateObject())
            {
                Assert.All(form.Value.EnumerateArray(), number => Assert.Equal(form.Name, PluralRules.CategoryOf(language, number.GetDouble())));
            }
        }
    }

    [Fact]
    public void Messages_come_out_as_ICU_writes_them()
    {
        using var samples = JsonDocument.Parse(File.ReadAllText(Path.Combine(Checkout.Root, "tests/outputs/messages.json")));
        Assert.All(samples.RootElement.EnumerateArray(), sample => Assert.Equal(
            sample.GetProperty("text").GetString(),
            Written(
                sample.GetProperty("message").GetString()!,
                PackLanguages.Find(sample.GetProperty("language").GetString()!)!.Value,
                sample.GetProperty("values").EnumerateObject().ToDictionary(value => value.Name, Value))));
    }

    [Fact]
    public void What_stands_between_the_marks_of_bold_letters_is_told_apart() =>
        Assert.Equal("a *b* c", Written("a <b>{b}</b> c", PackLanguage.English, new Dictionary<string, object> { ["b"] = "b" }));

    [Theory]
    [InlineData("{", "a name is missing, at character 2 of: {")]
    [InlineData("a}", "a } closes nothing, at character 2 of: a}")]
    [InlineData("{n, plural, one {#}}", "`n` has no words for `other`, at character 21 of: {n, plural, one {#}}")]
    [InlineData("{n, number}", "`number` is no sort of argument; there are plural and select, at character 11 of: {n, number}")]
    [InlineData("{n, select, other {a}", "a name is missing, at character 22 of: {n, select, other {a}")]
    public void A_message_that_is_none_is_refused(string message, string why) =>
        Assert.Equal(why, Assert.Throws<FormatException>(() => IcuMessage.Parse(message)).Message);

    [Fact]
    public void An_argument_that_is_not_given_is_told()
    {
        var failure = Assert.Throws<ArgumentException>(() => Written("{a} {b}", PackLanguage.English, new Dictionary<string, object> { ["a"] = 1 }));

        Assert.Contains("`b`", failure.Message, StringComparison.Ordinal);
    }

    private static object Value(JsonProperty value) => value.Value.ValueKind == JsonValueKind.Number ? value.Value.GetDouble() : value.Value.GetString()!;

    private static string Written(string message, PackLanguage language, Dictionary<string, object> values)
    {
        var output = new Output();
        IcuMessage.Parse(message).Write(language, values, output);
        return output.Text.ToString();
    }

    private sealed class Output : IMessageOutput
    {
        public StringBuilder Text { get; } = new();

        public void Literal(string text) => Text.Append(text);

        public void Argument(object value) => Text.Append(value);

        public void Bold(bool begins) => Text.Append('*');
    }
}
