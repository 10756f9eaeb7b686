using System.Collections.Immutable;

namespace ProcScript.Analysis.Prose;

/// <summary>A sentence of a text, or an item of a list in it.</summary>
/// <param name="Text">The text that it stands in.</param>
/// <param name="Start">Where it begins, in the value of the text.</param>
/// <param name="End">Where it ends, its full stop included.</param>
/// <param name="Paragraph">The paragraph, counted from 0.</param>
/// <param name="Words">Its words.</param>
internal sealed record Sentence(string Text, int Start, int End, int Paragraph, ImmutableArray<Word> Words)
{
    /// <summary>What it says, with the blanks between its words as they are written.</summary>
    public override string ToString() => Text[Start..End];

    /// <summary>What stands between a word and the one before.</summary>
    public ReadOnlySpan<char> Before(int word) =>
        word == 0 ? Text.AsSpan(Start, Words[0].Start - Start) : Text.AsSpan(Words[word - 1].End, Words[word].Start - Words[word - 1].End);

    /// <summary>Whether the words from <paramref name="at"/> on are these, in any case of letters.</summary>
    public bool Has(int at, params ReadOnlySpan<string> words)
    {
        for (var i = 0; i < words.Length; i++)
        {
            if (at + i >= Words.Length || !Words[at + i].Is(words[i]))
            {
                return false;
            }
        }

        return true;
    }
}

/// <summary>A word as it is counted: a word with hyphens, an abbreviation, and a number with its unit are one each.</summary>
/// <param name="Text">The word, without the marks around it.</param>
/// <param name="Start">Where it begins, in the value of the text.</param>
/// <param name="End">Where it ends.</param>
internal readonly record struct Word(string Text, int Start, int End)
{
    /// <summary>Whether it is this word, in any case of letters.</summary>
    public bool Is(string word) => Text.Equals(word, StringComparison.OrdinalIgnoreCase);
}
