using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ProcScript.Syntax;

namespace ProcScript.Model.Texts;

/// <summary>
/// The authors' texts of a library that is bound to be told in another language. Everything that reads a text while a job is worked out still
/// reads what the author wrote; each text only stands between marks that lead to its translation, which <see cref="Told"/> puts in at the end.
/// </summary>
/// <param name="find">The translations of some texts of a file by their keys, those of texts that have changed since left out.</param>
public sealed partial class LibraryTexts(Func<string, ImmutableArray<AuthorTextUnit>, IReadOnlyDictionary<string, string>> find)
{
    // Private use, so that no pattern takes a mark or what stands in it for a letter or a figure of the text.
    private const char Start = '\uE000';
    private const char Open = '\uE001';
    private const char End = '\uE002';
    private const char Digits = '\uE010';

    private readonly ConcurrentDictionary<(string Source, string? Target), int> _numbers = new();
    private readonly ConcurrentDictionary<int, string?> _targets = new();
    private int _count;

    /// <summary>What begins a text of an author that has no translation, in what is told.</summary>
    public const char OriginalStart = '\u2068';

    /// <summary>What ends it.</summary>
    public const char OriginalEnd = '\u2069';

    /// <summary>What an author wrote, without marks.</summary>
    public static string Plain(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Contains(Start, StringComparison.Ordinal) ? Mark().Replace(text, "$2") : text;
    }

    /// <summary>A text with the translations put in; what has none stands as it is between <see cref="OriginalStart"/> and <see cref="OriginalEnd"/>.</summary>
    public string Told(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Contains(Start, StringComparison.Ordinal)
            ? Mark().Replace(text, mark => _targets[Number(mark.Groups[1].ValueSpan)] ?? Original(mark.Groups[2].Value))
            : text;
    }

    /// <summary>The texts of a file.</summary>
    internal FileTexts For(string path, SyntaxTree tree)
    {
        var units = AuthorTextUnits.Of(tree);
        return new FileTexts(this, units, find(path, units));
    }

    /// <summary>A text between marks.</summary>
    internal string Marked(string source, string? target)
    {
        var number = _numbers.GetOrAdd((source, target), _ => Interlocked.Increment(ref _count));
        _targets[number] = target;
        var mark = new StringBuilder().Append(Start);
        foreach (var digit in number.ToString(CultureInfo.InvariantCulture))
        {
            mark.Append((char)(Digits + digit - '0'));
        }

        return mark.Append(Open).Append(source).Append(End).ToString();
    }

    /// <summary>Line by line, behind what begins a list or a quote.</summary>
    private static string Original(string text) =>
        string.Join('\n', text.Split('\n').Select(line => Line().Replace(line, $"$1{OriginalStart}$2{OriginalEnd}")));

    private static int Number(ReadOnlySpan<char> digits)
    {
        var number = 0;
        foreach (var digit in digits)
        {
            number = (number * 10) + digit - Digits;
        }

        return number;
    }

    [GeneratedRegex("\uE000([\uE010-\uE019]+)\uE001([^\uE000\uE002]*)\uE002", RegexOptions.CultureInvariant)]
    private static partial Regex Mark();

    [GeneratedRegex(@"^(\s*(?:[-*+>]\s+|\d+[.)]\s+)*)(\S.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Line();
}
