using System.Collections.Immutable;
using System.Text;

namespace ProcScript.Analysis.Messages;

/// <summary>Reads the syntax of ICU messages.</summary>
/// <param name="text">The message.</param>
internal sealed class IcuMessageReader(string text)
{
    private const string BoldStart = "<b>";
    private const string BoldEnd = "</b>";

    private int _at;

    /// <summary>Reads all of it.</summary>
    public ImmutableArray<IcuMessage.Part> Read()
    {
        var parts = Parts(inPlural: false);
        return _at < text.Length ? throw Wrong("a } closes nothing") : parts;
    }

    private ImmutableArray<IcuMessage.Part> Parts(bool inPlural)
    {
        var parts = ImmutableArray.CreateBuilder<IcuMessage.Part>();
        var words = new StringBuilder();
        while (_at < text.Length && text[_at] != '}')
        {
            switch (text[_at])
            {
                case '\'':
                    Quote(words, inPlural);
                    continue;
                case '{':
                    Flush();
                    parts.Add(Placeholder());
                    continue;
                case '#' when inPlural:
                    Flush();
                    parts.Add(new IcuMessage.Counted());
                    break;
                case '<' when Follows(BoldStart) || Follows(BoldEnd):
                    Flush();
                    parts.Add(new IcuMessage.Bold(Follows(BoldStart)));
                    _at += Follows(BoldStart) ? BoldStart.Length : BoldEnd.Length;
                    continue;
                default:
                    words.Append(text[_at]);
                    break;
            }

            _at++;
        }

        Flush();
        return parts.ToImmutable();

        void Flush()
        {
            if (words.Length > 0)
            {
                parts.Add(new IcuMessage.Literal(words.ToString()));
                words.Clear();
            }
        }
    }

    /// <summary>Two apostrophes are one; one before a mark of the syntax quotes up to the next; any other is an apostrophe.</summary>
    private void Quote(StringBuilder words, bool inPlural)
    {
        _at++;
        if (_at < text.Length && text[_at] == '\'')
        {
            words.Append('\'');
            _at++;
            return;
        }

        if (_at >= text.Length || !(text[_at] is '{' or '}' || (inPlural && text[_at] == '#')))
        {
            words.Append('\'');
            return;
        }

        while (_at < text.Length)
        {
            if (text[_at] == '\'')
            {
                _at++;
                if (_at >= text.Length || text[_at] != '\'')
                {
                    return;
                }
            }

            words.Append(text[_at++]);
        }
    }

    private IcuMessage.Part Placeholder()
    {
        _at++;
        var name = Word();
        if (Takes('}'))
        {
            return new IcuMessage.Argument(name);
        }

        Expect(',');
        var sort = Word();
        if (sort is not ("plural" or "select"))
        {
            throw Wrong($"`{sort}` is no sort of argument; there are plural and select");
        }

        Expect(',');
        var ways = ImmutableArray.CreateBuilder<(string, ImmutableArray<IcuMessage.Part>)>();
        while (!Takes('}'))
        {
            var key = Word();
            Expect('{');
            ways.Add((key, Parts(sort == "plural")));
            Expect('}');
        }

        if (!ways.Any(way => way.Item1 == "other"))
        {
            throw Wrong($"`{name}` has no words for `other`");
        }

        return new IcuMessage.Choice(name, sort == "plural", ways.ToImmutable());
    }

    private string Word()
    {
        SkipBlanks();
        var start = _at;
        while (_at < text.Length && (char.IsLetterOrDigit(text[_at]) || text[_at] is '_' or '-' or '='))
        {
            _at++;
        }

        var word = text[start.._at];
        SkipBlanks();
        return word.Length > 0 ? word : throw Wrong("a name is missing");
    }

    private bool Takes(char mark)
    {
        SkipBlanks();
        if (_at < text.Length && text[_at] == mark)
        {
            _at++;
            return true;
        }

        return false;
    }

    private void Expect(char mark)
    {
        if (_at >= text.Length || text[_at] != mark)
        {
            throw Wrong($"`{mark}` is missing");
        }

        _at++;
    }

    private void SkipBlanks()
    {
        while (_at < text.Length && char.IsWhiteSpace(text[_at]))
        {
            _at++;
        }
    }

    private bool Follows(string mark) => string.CompareOrdinal(text, _at, mark, 0, mark.Length) == 0;

    private FormatException Wrong(string what) => new($"{what}, at character {_at + 1} of: {text}");
}
