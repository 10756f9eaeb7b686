using System.Collections.Immutable;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The ways to write an alert.</summary>
internal static class AlertSentences
{
    private static readonly ImmutableArray<(string Word, string Meaning)> Words =
    [
        ("danger", "it will kill or injure badly"),
        ("warning", "it could kill or injure badly"),
        ("caution", "it could injure slightly"),
        ("notice", "damage, nobody is hurt"),
    ];

    /// <summary>Those that stand both ways.</summary>
    public static ImmutableArray<Sentence> BothWays { get; } = [.. Words.Select(one => Of(one.Word, one.Meaning))];

    /// <summary>Those that stand one way only.</summary>
    public static ImmutableArray<Sentence> OneWay { get; } =
    [
        .. Words.Select(one => Of($"strip {one.Word}", $"taking off only: {one.Meaning}")),
        .. Words.Select(one => Of($"refit {one.Word}", $"putting back only: {one.Meaning}")),
    ];

    private static Sentence Of(string words, string meaning) => new(words, meaning, $"{words} \"${{1:what it does and how to avoid it}}\"");
}
