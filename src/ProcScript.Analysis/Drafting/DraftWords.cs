using System.Text;
using ProcScript.Model.Names;

namespace ProcScript.Analysis.Drafting;

/// <summary>Names and the words that people say for them.</summary>
internal static class DraftWords
{
    /// <summary>One of them: <c>bolts</c> is <c>bolt</c>.</summary>
    public static string Singular(string word) =>
        word.EndsWith("ies", StringComparison.OrdinalIgnoreCase) && word.Length > 4 ? word[..^3] + "y"
        : word.EndsWith("ches", StringComparison.OrdinalIgnoreCase) || word.EndsWith("xes", StringComparison.OrdinalIgnoreCase) ? word[..^2]
        : IsPlural(word) ? word[..^1]
        : word;

    /// <summary>Whether a word, or the last of several, means more than one.</summary>
    public static bool IsPlural(string words) =>
        words.EndsWith('s') && words.Length > 3
        && !words.EndsWith("ss", StringComparison.Ordinal) && !words.EndsWith("us", StringComparison.Ordinal) && !words.EndsWith("is", StringComparison.Ordinal)
        && !words.EndsWith("mains", StringComparison.OrdinalIgnoreCase) && !words.EndsWith("chassis", StringComparison.OrdinalIgnoreCase);

    /// <summary>The last word of a name without its index.</summary>
    public static string LastWord(string name)
    {
        var stem = CanonicalName.Base(name).TrimEnd('_', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9');
        return stem[(stem.LastIndexOf('_') + 1)..];
    }

    /// <summary>A name as people say it; with an index, that comes first: <c>left door</c>.</summary>
    public static string Words(string name)
    {
        var stem = CanonicalName.Base(name);
        var index = name[stem.Length..].Trim('[', ']').Replace(",", "", StringComparison.Ordinal);
        return (index.Length == 0 ? stem : index + " " + stem).Replace('_', ' ').Trim();
    }

    /// <summary>What people say as a name; empty where nothing of it can stand in one.</summary>
    public static string Name(string words)
    {
        var name = new StringBuilder(words.Length);
        foreach (var letter in words.Normalize(NormalizationForm.FormC))
        {
            if (char.IsLetterOrDigit(letter))
            {
                name.Append(char.ToLowerInvariant(letter));
            }
            else if (name.Length > 0 && name[^1] != '_' && letter != '\'')
            {
                name.Append('_');
            }
        }

        var made = name.ToString().Trim('_');
        return made.Length == 0 ? "" : char.IsDigit(made[0]) ? "_" + made : made;
    }

    /// <summary>A text in its quotes.</summary>
    public static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"", text.Length + 2);
        foreach (var letter in text)
        {
            quoted.Append(letter switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '{' => "{{",
                _ when char.IsControl(letter) => " ",
                _ => letter.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>With a capital letter.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary><c>is</c> or <c>are</c>.</summary>
    public static string Is(string words) => IsPlural(words) ? "are" : "is";

    /// <summary><c>does</c> or <c>do</c>.</summary>
    public static string Does(string words) => IsPlural(words) ? "do" : "does";
}
