using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Messages;

namespace ProcScript.Floor.Tests.Words;

/// <summary>The words of the page as their files have them.</summary>
internal static partial class PageWords
{
    private static readonly string Floor = Path.Combine(Checkout.Root, "src", "ProcScript.Floor");

    /// <summary>The messages of a language, by their keys.</summary>
    public static IReadOnlyDictionary<string, string> In(PackLanguage language)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(Floor, "Words", $"{language.Tag()}.json")));
        return document.RootElement.EnumerateObject().ToDictionary(message => message.Name, message => message.Value.GetString()!, StringComparer.Ordinal);
    }

    /// <summary>The keys that the page names, and the beginnings of those that it puts together.</summary>
    public static (IReadOnlySet<string> Keys, IReadOnlySet<string> Beginnings) Named()
    {
        var page = string.Join('\n', Directory.EnumerateFiles(Path.Combine(Floor, "Page"), "*.js").Select(File.ReadAllText));
        return (
            Calls().Matches(page).SelectMany(call => Keys().Matches(call.Groups["what"].Value)).Select(key => key.Groups["key"].Value).ToHashSet(StringComparer.Ordinal),
            Joined().Matches(page).Select(call => call.Groups["start"].Value).ToHashSet(StringComparer.Ordinal));
    }

    /// <summary>What a message says.</summary>
    public static string Say(PackLanguage language, string message, IReadOnlyDictionary<string, object> values)
    {
        PlainText text = new();
        IcuMessage.Parse(message).Write(language, values, text);
        return text.ToString();
    }

    [GeneratedRegex("""phrase\((?<what>[^,`{)]*)""")]
    private static partial Regex Calls();

    [GeneratedRegex("(?<!=== )\"(?<key>[a-z][a-z.-]+)\"")]
    private static partial Regex Keys();

    [GeneratedRegex("""phrase\(`(?<start>[^$]+)\$""")]
    private static partial Regex Joined();

    private sealed class PlainText : IMessageOutput
    {
        private readonly StringBuilder _text = new();

        public void Literal(string text) => _text.Append(text);

        public void Argument(object value) => _text.Append(Convert.ToString(value, CultureInfo.InvariantCulture));

        public void Bold(bool begins) => throw new InvalidOperationException("The page has no bold messages.");

        public override string ToString() => _text.ToString();
    }
}
