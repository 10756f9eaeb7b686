using CsCheck;

namespace ProcScript.Syntax.Tests;

/// <summary>Texts to try the parser on: of any characters, of the language's own words in any order, and good ones with a change.</summary>
internal static class AnyText
{
    private static readonly string[] Words =
    [
        .. Sample.Words(Sample.Parse(Sample.Everything))
            .Select(token => Sample.Everything.Substring(token.Span.Start, token.Span.Length))
            .Distinct(),
        "\n", "\r\n", "\r", " ", "// note\n", "// proc: allow PRC1001 because \"x\"\n",
        "\"", "“", "”", ";", "€", "\0", "\uD800", "{", "}", "{", "}",
    ];

    /// <summary>Any UTF-16 units, printable ones more often than others.</summary>
    public static Gen<string> Characters { get; } =
        Gen.OneOf<char>(Gen.Char[' ', '~'], Gen.Char[' ', '~'], Gen.Char, Gen.OneOf<char>('\n', '\r', '"', '{', '}', '±', '°', '“', '\t'))
            .Array[0, 200]
            .Select(characters => new string(characters));

    /// <summary>Words of the language in any order.</summary>
    public static Gen<string> Soup { get; } =
        Gen.Select(Gen.OneOf<string>(Words), Gen.OneOf<string>("", " ", "\n  ")).Array[0, 120]
            .Select(words => string.Concat(words.Select(word => word.Item1 + word.Item2)));

    /// <summary>A good text from which a stretch was cut, or into which a word was put.</summary>
    public static Gen<string> Changed { get; } =
        from content in Gen.OneOf<string>(Sample.All.ToArray())
        from start in Gen.Int[0, content.Length - 1]
        from length in Gen.Int[0, Math.Min(40, content.Length - start)]
        from word in Gen.OneOf<string>(Words)
        select content.Remove(start, length).Insert(start, word);

    /// <summary>All of these.</summary>
    public static Gen<string> Any { get; } = Gen.OneOf<string>(Characters, Soup, Changed);
}
