using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>Judges a file before anything is read of it: whether it is text, and of a sensible size.</summary>
internal static class EncodingCheck
{
    /// <summary>How many characters a file may have.</summary>
    public const int LongestFile = 16 * 1024 * 1024;

    // What a decoder writes for bytes that are not in its encoding.
    private const char Replacement = '\uFFFD';

    /// <summary>Reports what keeps a file from being read as text, and returns whether it is read in spite of that.</summary>
    public static bool Passes(SourceText text, FindingLog log)
    {
        if (text.Content.Length > LongestFile)
        {
            log.Add(FileTooLarge.At(text, LongestFile));
            return false;
        }

        var zero = text.Content.IndexOf('\0');
        if (zero >= 0)
        {
            log.Add(NotText.Binary(text, zero));
            return false;
        }

        var broken = FirstBroken(text.Content);
        if (broken >= 0)
        {
            log.Add(NotText.Broken(text, broken));
        }

        return true;
    }

    /// <summary>Whether a stretch of a text surely holds nothing to report; beyond the plane of most characters nothing is sure.</summary>
    public static bool IsClean(ReadOnlySpan<char> stretch) =>
        !stretch.ContainsAnyInRange('\uD800', '\uDFFF') && !stretch.ContainsAny('\0', Replacement);

    /// <summary>Whether a run of characters holds nothing but what no encoding gives; <see cref="Passes"/> has reported it.</summary>
    public static bool IsBroken(string content, TextSpan run)
    {
        for (var i = run.Start; i < run.End; i++)
        {
            if (!IsBroken(content, i))
            {
                return false;
            }
        }

        return true;
    }

    private static int FirstBroken(string content)
    {
        for (var i = Next(0); i >= 0; i = Next(i + 1))
        {
            if (IsBroken(content, i))
            {
                return i;
            }
        }

        return -1;

        int Next(int from)
        {
            var found = content.AsSpan(from).IndexOfAnyInRange('\uD800', '\uDFFF');
            var replaced = content.AsSpan(from).IndexOf(Replacement);
            return found < 0 ? (replaced < 0 ? -1 : from + replaced) : from + (replaced < 0 ? found : Math.Min(found, replaced));
        }
    }

    private static bool IsBroken(string content, int i) => content[i] switch
    {
        Replacement => true,
        var c when char.IsHighSurrogate(c) => i + 1 == content.Length || !char.IsLowSurrogate(content[i + 1]),
        var c when char.IsLowSurrogate(c) => i == 0 || !char.IsHighSurrogate(content[i - 1]),
        _ => false,
    };
}
