using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Messages;

/// <summary>
/// Every word that a pack says by itself, in one language: the one place that cards, plans and pages take them from. The messages stand in a
/// file a language, <c>Messages/en.json</c> and so on, which are built in.
/// </summary>
public sealed class Wordbook
{
    private static readonly FrozenDictionary<PackLanguage, Lazy<Wordbook>> Books =
        PackLanguages.All.ToFrozenDictionary(language => language, language => new Lazy<Wordbook>(() => new Wordbook(language)));

    private readonly FrozenDictionary<string, Lazy<IcuMessage>> _messages;
    private readonly Dictionary<string, string> _written;

    private Wordbook(PackLanguage language)
    {
        Language = language;
        _written = Read(language);
        _messages = _written.ToFrozenDictionary(message => message.Key, message => new Lazy<IcuMessage>(() => IcuMessage.Parse(message.Value)), StringComparer.Ordinal);
        Numbers = new NumberStyle(Say("number.decimal-mark"), Say("number.to"));
    }

    /// <summary>The English ones, which findings take too.</summary>
    public static Wordbook English => In(PackLanguage.English);

    /// <summary>The language.</summary>
    public PackLanguage Language { get; }

    /// <summary>The keys of all messages, in order.</summary>
    public ImmutableArray<string> Keys => [.. _messages.Keys.Order(StringComparer.Ordinal)];

    /// <summary>How numbers are written.</summary>
    public NumberStyle Numbers { get; }

    /// <summary>The words of a language.</summary>
    public static Wordbook In(PackLanguage language) => Books[language].Value;

    /// <summary>A message, to be filled in.</summary>
    public IcuMessage Message(string key) => _messages.TryGetValue(key, out var message)
        ? message.Value
        : throw new ArgumentException($"There is no message `{key}`.", nameof(key));

    /// <summary>A message as its file has it.</summary>
    public string Written(string key) => _written[key];

    /// <summary>Whether there is a message of that key.</summary>
    public bool Has(string key) => _messages.ContainsKey(key);

    /// <summary>A message with its arguments filled in. Whole numbers are written plain, quantities as the language writes them.</summary>
    public string Say(string key, params ReadOnlySpan<(string Name, object Value)> arguments)
    {
        var named = new Dictionary<string, object>(arguments.Length, StringComparer.Ordinal);
        foreach (var (name, value) in arguments)
        {
            named.Add(name, value);
        }

        var text = new PlainText();
        Message(key).Write(Language, named, text);
        return text.ToString();
    }

    /// <summary>A quantity as this language writes it.</summary>
    public string Print(Quantity quantity) => quantity.Print(Numbers);

    /// <summary>A limit as this language writes it.</summary>
    public string Print(Limit limit) => limit.Print(Numbers);

    /// <summary>A sentence as it stands within another: begins small, unless the first word is an abbreviation or the language begins with a noun.</summary>
    public string Within(string sentence)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        return Language.BeginsSmallWithin() && sentence.Length > 1 && char.IsLower(sentence[1]) ? char.ToLowerInvariant(sentence[0]) + sentence[1..] : sentence;
    }

    /// <summary>Several things: <c>a, b and c</c>.</summary>
    public string And(IReadOnlyList<string> things)
    {
        ArgumentNullException.ThrowIfNull(things);
        return things.Count < 2
            ? string.Concat(things)
            : Say("list.and", ("first", string.Join(", ", things.SkipLast(1))), ("last", things[^1]));
    }

    private static Dictionary<string, string> Read(PackLanguage language)
    {
        var name = $"Messages/{language.Tag()}.json";
        using var stream = typeof(Wordbook).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The messages {name} are not built in.");
        using var document = JsonDocument.Parse(stream);
        return document.RootElement.EnumerateObject().ToDictionary(message => message.Name, message => message.Value.GetString()!, StringComparer.Ordinal);
    }

    /// <summary>Writes messages as plain text; what is bold is bold in Markdown.</summary>
    private sealed class PlainText : IMessageOutput
    {
        private readonly StringBuilder _text = new();

        public void Literal(string text) => _text.Append(text);

        public void Argument(object value) => _text.Append(Convert.ToString(value, CultureInfo.InvariantCulture));

        public void Bold(bool begins) => _text.Append("**");

        public override string ToString() => _text.ToString();
    }
}
