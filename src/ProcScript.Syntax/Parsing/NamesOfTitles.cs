using System.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>Names that a text itself suggests for what has none.</summary>
internal static class NamesOfTitles
{
    private const string Machine = "machine ";

    /// <summary>The name for what has a title: one of its last words where the file speaks of something by that name, else all of its words.</summary>
    /// <param name="text">The text.</param>
    /// <param name="title">The title with its quotes.</param>
    public static string? For(SourceText text, TextSpan title)
    {
        var words = Words(text.Content.AsSpan(title.Start, title.Length));
        var names = Enumerable.Range(0, words.Count).Select(first => string.Join('_', words.Skip(first))).Where(name => char.IsLetter(name[0])).ToList();
        return names.Find(name => IsSpokenOf(text.Content, name)) ?? names.FirstOrDefault();
    }

    /// <summary>The machine that a file declares, where that is one.</summary>
    public static string? OnlyMachine(SourceText text)
    {
        string? found = null;
        for (var line = 0; line < text.LineCount; line++)
        {
            var span = text.LineSpan(line);
            var words = text.Content.AsSpan(span.Start, span.Length);
            if (!words.StartsWith(Machine))
            {
                continue;
            }

            if (found is not null)
            {
                return null;
            }

            var name = words[Machine.Length..].TrimStart();
            var end = name.IndexOfAny(' ', '{');
            found = (end < 0 ? name : name[..end]).ToString();
        }

        return found is { Length: > 0 } ? found : null;
    }

    private static List<string> Words(ReadOnlySpan<char> title)
    {
        List<string> words = [];
        StringBuilder word = new();
        foreach (var character in title)
        {
            if (char.IsAsciiLetterOrDigit(character))
            {
                word.Append(char.ToLowerInvariant(character));
            }
            else if (word.Length > 0)
            {
                words.Add(word.ToString());
                word.Clear();
            }
        }

        return words;
    }

    // Words in texts do not count: there stands a quote or a letter right before or behind, or another word.
    private static bool IsSpokenOf(string content, string name)
    {
        foreach (var line in content.AsSpan().EnumerateLines())
        {
            var sentence = line.IndexOf('"') is >= 0 and var quote ? line[..quote] : line;
            foreach (var range in sentence.SplitAny(" \t,[](){}"))
            {
                if (sentence[range].SequenceEqual(name))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
