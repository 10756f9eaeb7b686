using System.Collections.Immutable;
using System.Globalization;

namespace ProcScript.Analysis.Messages;

/// <summary>
/// A message in the syntax of ICU MessageFormat: <c>{count, plural, one {# bag} other {# bags}}</c>, <c>{name}</c> and <c>select</c>; quoting as
/// there. <c>&lt;b&gt;…&lt;/b&gt;</c> makes a stretch bold. Offsets, ordinals and the formats of numbers and dates are no part of it.
/// </summary>
public sealed class IcuMessage
{
    private readonly ImmutableArray<Part> _parts;

    private IcuMessage(ImmutableArray<Part> parts) => _parts = parts;

    /// <summary>The names of its arguments, each once, in order.</summary>
    public ImmutableArray<string> Arguments => [.. Names(_parts).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The forms that each of its plurals has words for.</summary>
    public ImmutableArray<ImmutableArray<string>> PluralForms => [.. Choices(_parts).Where(choice => choice.IsPlural).Select(choice => choice.Ways.Select(way => way.Key).ToImmutableArray())];

    /// <summary>Reads a message.</summary>
    /// <exception cref="FormatException">It is not written as one.</exception>
    public static IcuMessage Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new IcuMessage(new IcuMessageReader(text).Read());
    }

    /// <summary>Writes it out.</summary>
    /// <param name="language">The language, for its plurals.</param>
    /// <param name="arguments">The arguments by name.</param>
    /// <param name="output">Takes the pieces.</param>
    public void Write(PackLanguage language, IReadOnlyDictionary<string, object> arguments, IMessageOutput output)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        ArgumentNullException.ThrowIfNull(output);
        Write(_parts, language, arguments, output, null);
    }

    private static void Write(ImmutableArray<Part> parts, PackLanguage language, IReadOnlyDictionary<string, object> arguments, IMessageOutput output, object? counted)
    {
        foreach (var part in parts)
        {
            switch (part)
            {
                case Literal literal:
                    output.Literal(literal.Text);
                    break;
                case Argument argument:
                    output.Argument(Value(argument.Name));
                    break;
                case Counted when counted is not null:
                    output.Argument(counted);
                    break;
                case Bold bold:
                    output.Bold(bold.Begins);
                    break;
                case Choice choice:
                    var value = Value(choice.Name);
                    Write(Chosen(choice, value, language), language, arguments, output, choice.IsPlural ? value : counted);
                    break;
            }
        }

        object Value(string name) => arguments.TryGetValue(name, out var value)
            ? value
            : throw new ArgumentException($"The message needs `{name}`, which is not among what it was given: {string.Join(", ", arguments.Keys)}.", nameof(arguments));
    }

    private static ImmutableArray<Part> Chosen(Choice choice, object value, PackLanguage language)
    {
        if (!choice.IsPlural)
        {
            return Way(Convert.ToString(value, CultureInfo.InvariantCulture) ?? "") ?? Way("other")!.Value;
        }

        var number = Convert.ToDouble(value, CultureInfo.InvariantCulture);
        return Way("=" + number.ToString(CultureInfo.InvariantCulture)) ?? Way(PluralRules.CategoryOf(language, number)) ?? Way("other")!.Value;

        ImmutableArray<Part>? Way(string key)
        {
            foreach (var way in choice.Ways)
            {
                if (way.Key == key)
                {
                    return way.Parts;
                }
            }

            return null;
        }
    }

    private static IEnumerable<string> Names(ImmutableArray<Part> parts) => parts.SelectMany(part => part switch
    {
        Argument argument => [argument.Name],
        Choice choice => choice.Ways.SelectMany(way => Names(way.Parts)).Prepend(choice.Name),
        _ => Enumerable.Empty<string>(),
    });

    private static IEnumerable<Choice> Choices(ImmutableArray<Part> parts) =>
        parts.OfType<Choice>().SelectMany(choice => choice.Ways.SelectMany(way => Choices(way.Parts)).Prepend(choice));

    /// <summary>A piece of a message.</summary>
    internal abstract record Part;

    /// <summary>Words that stand as they are.</summary>
    internal sealed record Literal(string Text) : Part;

    /// <summary>The place of an argument.</summary>
    internal sealed record Argument(string Name) : Part;

    /// <summary>The number that a plural goes by.</summary>
    internal sealed record Counted : Part;

    /// <summary>Where bold letters begin or end.</summary>
    internal sealed record Bold(bool Begins) : Part;

    /// <summary>One of several ways to go on, by a number or by a word.</summary>
    internal sealed record Choice(string Name, bool IsPlural, ImmutableArray<(string Key, ImmutableArray<Part> Parts)> Ways) : Part;
}

/// <summary>Takes the pieces of a message in order.</summary>
public interface IMessageOutput
{
    /// <summary>Words of the message.</summary>
    void Literal(string text);

    /// <summary>The value of an argument.</summary>
    void Argument(object value);

    /// <summary>Where bold letters begin or end.</summary>
    void Bold(bool begins);
}
