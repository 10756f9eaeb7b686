using ProcScript.Syntax.Rules.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// Reports the characters that the language does not use, a run at a time, and typographic quotes. A line is spoken of when it
/// is over: where a quote is missing on it, they are most likely part of a text.
/// </summary>
internal sealed class CharacterCheck(SourceText text, FindingLog log)
{
    private readonly List<TextSpan> _runs = [];
    private readonly List<TextSpan> _texts = [];
    private int _line = -1;
    private int _forgotten = -1;

    /// <summary>Takes a character that begins no token.</summary>
    public void TakeUnknown(TextSpan character)
    {
        if (_runs.Count > 0 && _runs[^1].End == character.Start)
        {
            _runs[^1] = _runs[^1].Cover(character);
        }
        else
        {
            Take(character, _runs);
        }
    }

    /// <summary>Takes a text with its quotes.</summary>
    public void TakeText(TextSpan quoted)
    {
        if (CharacterStream.IsTypographicQuote(text.Content[quoted.Start])
            || CharacterStream.IsTypographicQuote(text.Content[quoted.End - 1]))
        {
            Take(quoted, _texts);
        }
    }

    /// <summary>Takes a text with its quotes, or a comment: in neither of them a character is to be hidden.</summary>
    public void TakeWords(TextSpan words)
    {
        if (HiddenCharacter.AreNoneIn(text.Content.AsSpan(words.Start, words.Length)))
        {
            return;
        }

        foreach (var run in HiddenCharacter.In(text.Content, words).Where(_ => log.TakesAnother()))
        {
            log.Add(HiddenCharacter.At(text, run));
        }
    }

    /// <summary>Takes a name.</summary>
    public void TakeName(TextSpan name)
    {
        if (LookAlikeName.Find(text, name) is { } finding && log.TakesAnother())
        {
            log.Add(finding);
        }
    }

    /// <summary>Says nothing of a line; what is wrong with it is said elsewhere.</summary>
    public void ForgetLine(int line) => _forgotten = line;

    /// <summary>Reports what the last line has left.</summary>
    public void EndFile() => Report();

    private void Take(TextSpan span, List<TextSpan> found)
    {
        var line = text.LineAt(span.Start);
        if (line != _line)
        {
            Report();
            _line = line;
        }

        found.Add(span);
    }

    private void Report()
    {
        if (_line != _forgotten)
        {
            foreach (var quoted in _texts.Where(_ => log.TakesAnother()))
            {
                log.Add(UnknownCharacter.TypographicQuotes(text, quoted));
            }

            // The same characters again on one line are the same slip.
            var strange = _runs.Where(run => !EncodingCheck.IsBroken(text.Content, run));
            foreach (var alike in strange.GroupBy(text.Slice).Where(_ => log.TakesAnother()))
            {
                log.Add(UnknownCharacter.At(text, [.. alike]));
            }
        }

        _runs.Clear();
        _texts.Clear();
    }
}
