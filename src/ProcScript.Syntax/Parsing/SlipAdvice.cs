using static ProcScript.Syntax.Generated.ProcScriptParser;

namespace ProcScript.Syntax.Parsing;

/// <summary>What to tell an author about slips that are made again and again.</summary>
internal static class SlipAdvice
{
    /// <summary>The advice for a token that cannot stand where it does; empty where there is none.</summary>
    /// <param name="found">The kind of the token.</param>
    /// <param name="previous">The kind of the one before.</param>
    /// <param name="expected">The kinds that may stand here.</param>
    public static string For(int found, int previous, IReadOnlyCollection<int> expected) => (found, previous) switch
    {
        (AT or TO or ON or CARRIES or COVERED or LOCKED, _) when expected.Contains(HELD) =>
            "it belongs to a joint: write it right behind the joint, or in its block",
        (_, INTEGER) when expected.Count == 1 && expected.Contains(SLASH) =>
            "a number is written without blanks, as in `1500`; only a fraction has one, as in `1 3/8`",
        _ when expected.Contains(ADD) && expected.Contains(TAKE) =>
            "a tool is written `tool`, or stands right behind the text of a reading, before `at` and `expect`; of a fluid `with` says what it adds or takes",
        (STRING, _) when expected.Contains(INTEGER) => "a number and its unit stand without quotes",
        (NAME, _) when expected.Contains(STRING) => "a text stands between double quotes",
        _ => "",
    };
}
