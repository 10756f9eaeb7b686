using System.Collections.Frozen;
using ProcScript.Model.Procedures;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>The verbs by their words.</summary>
internal static class Verbs
{
    private static readonly FrozenDictionary<string, Verb> ByWord = Enum.GetValues<Verb>()
        .ToFrozenDictionary(verb => verb.ToString().ToLowerInvariant(), StringComparer.Ordinal);

    /// <summary>The verb that a word is; null for any other word.</summary>
    public static Verb? Find(string word) => ByWord.TryGetValue(word, out var verb) ? verb : null;
}
