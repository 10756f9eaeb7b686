using System.Collections.Frozen;
using System.Text;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A name that looks like another one, of Latin letters.</summary>
public sealed class LookAlikeName : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1011", "look-alike-name", "A name of letters that look like others", Severity.Warning)
    {
        Fix = FixAvailability.Always,
    };

    // Letters of the Cyrillic, Greek and Armenian alphabets that print as Latin ones do, and one that only lacks its dot.
    private const string Others = "аеорсухіјѕԁһӏԛԝАВЕКМНОРСТХУІЈЅοινΑΒΕΖΗΙΚΜΝΟΡΤΥΧոսհօı";
    private const string Latin = "aeopcyxijsdhlqwABEKMHOPCTXYIJSoivABEZHIKMNOPTYXnuhoi";

    private static readonly FrozenDictionary<char, char> LooksLike = Others.Zip(Latin).ToFrozenDictionary(pair => pair.First, pair => pair.Second);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A name has letters of another alphabet, and each of its letters looks like a Latin one. A name with a letter that cannot be taken "
            + "for a Latin one is let be.",
        Why: "Two names that look the same are two things all the same: a step names one, and who reads it sees the other.",
        Wrong: """
            tool рry_bar "pry bar"
            """,
        Right: """
            tool pry_bar "pry bar"
            """);

    /// <summary>The finding for a name, or null where it looks like itself.</summary>
    internal static Finding? Find(SourceText text, TextSpan name)
    {
        var written = text.Content.AsSpan(name.Start, name.Length);
        if (Ascii.IsValid(written))
        {
            return null;
        }

        var read = new char[written.Length];
        for (var i = 0; i < written.Length; i++)
        {
            var letter = written[i];
            if (char.IsAscii(letter))
            {
                read[i] = letter;
            }
            else if (letter is >= '\uFF10' and <= '\uFF5A')
            {
                // The wide forms stand in the order of the plain ones.
                read[i] = (char)(letter - 0xFEE0);
            }
            else if (LooksLike.TryGetValue(letter, out var latin))
            {
                read[i] = latin;
            }
            else
            {
                return null;
            }
        }

        SourceSpan place = new(text.Path, name);
        var plain = new string(read);
        return new Finding(Id, $"`{written}` looks like `{plain}`, and is written with letters of another alphabet", place)
        {
            Help = $"write `{plain}` with the letters of the keyboard, wherever it is named",
            Fixes = [new Fix($"Write `{plain}`", FixGrade.NeedsLook, [new TextEdit(place, plain)])],
        };
    }
}
