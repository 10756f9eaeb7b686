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

    /// <summary>Whether the refit undoes it. Work stays as it is done, and so do texts.</summary>
    public static bool AreUndone(Verb verb) => verb is not (Verb.Verify or Verb.Retorque or Verb.Replace or Verb.Repair or Verb.Clean or Verb.Inspect or Verb.Adjust
        or Verb.Measure or Verb.Task or Verb.Check or Verb.Record or Verb.Pause or Verb.Discard);
}
