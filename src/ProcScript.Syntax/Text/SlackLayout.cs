using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace ProcScript.Syntax.Text;

/// <summary>
/// A text with room to grow, for an editor: behind each declaration stand blanks, at the end of its last line, which shrink as the
/// declaration grows. So what is typed in one moves none of the others, and all that is known of them by their offsets stays true. Lines
/// and columns are those of the text as written, and blanks at the end of a line mean nothing.
/// </summary>
public sealed class SlackLayout
{
    private const int LeastSlack = 64;

    /// <summary>The words that begin a declaration. Where one begins a line without being one, the room behind it does no harm.</summary>
    private static readonly string[] Openers = ["tool", "supply", "certificate", "fastener", "clip", "connector", "line", "bond", "machine", "procedure"];

    private readonly string _written;
    private readonly ImmutableArray<Stretch> _stretches;

    private SlackLayout(string written, ImmutableArray<Stretch> stretches)
    {
        _written = written;
        _stretches = stretches;
    }

    /// <summary>Lays a text out.</summary>
    public static SlackLayout Of(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        return new SlackLayout(written, [.. Split(written).Select(WithSlack)]);
    }

    /// <summary>Lays the text out after a change: what follows it stays where it is, unless the room is used up.</summary>
    public SlackLayout With(string written)
    {
        ArgumentNullException.ThrowIfNull(written);
        var stretches = Split(written);
        var (head, tail) = Unchanged(written, stretches);
        var old = _stretches.AsSpan()[head..^tail];
        var changed = CollectionsMarshal.AsSpan(stretches)[head..^tail];
        var room = -Length(changed);
        foreach (var stretch in old)
        {
            room += stretch.Length + stretch.Slack;
        }

        var laid = ImmutableArray.CreateBuilder<Stretch>(stretches.Count);
        laid.AddRange(_stretches.AsSpan()[..head]);
        if (room < 0)
        {
            foreach (var stretch in changed)
            {
                laid.Add(WithSlack(stretch));
            }
        }
        else
        {
            Share(changed, old, room, laid);
        }

        foreach (var stretch in _stretches.AsSpan()[^tail..])
        {
            laid.Add(stretch with { Start = laid.Count == 0 ? 0 : laid[^1].Start + laid[^1].Length });
        }

        return new SlackLayout(written, laid.DrainToImmutable());
    }

    /// <summary>The text with its room.</summary>
    public SourceText ToText(string path)
    {
        var slack = ImmutableArray.CreateBuilder<TextSpan>(_stretches.Length);
        var shift = 0;
        foreach (var stretch in _stretches)
        {
            var end = stretch.Start + stretch.Length;
            if (stretch.Slack > 0 && end < _written.Length)
            {
                slack.Add(new TextSpan(end - BreakBefore(_written, end) + shift, stretch.Slack));
                shift += stretch.Slack;
            }
        }

        var content = shift == 0 ? _written : string.Create(_written.Length + shift, (_written, slack), static (filled, from) =>
        {
            var (at, taken) = (0, 0);
            foreach (var blanks in from.slack)
            {
                var length = blanks.Start - at;
                from._written.AsSpan(taken, length).CopyTo(filled[at..]);
                filled.Slice(blanks.Start, blanks.Length).Fill(' ');
                (at, taken) = (blanks.End, taken + length);
            }

            from._written.AsSpan(taken).CopyTo(filled[at..]);
        });
        return new SourceText(path, content, slack.DrainToImmutable(), _written);
    }

    /// <summary>How many stretches at the beginning and at the end are those of before.</summary>
    private (int Head, int Tail) Unchanged(string written, List<Stretch> stretches)
    {
        var shared = written.AsSpan().CommonPrefixLength(_written);
        var most = Math.Min(stretches.Count, _stretches.Length);
        var head = 0;
        // A stretch ends where the next begins, and that must not be within the change either.
        while (head + 1 < most && stretches[head + 1].Start == _stretches[head + 1].Start && _stretches[head + 1].Start <= shared)
        {
            head++;
        }

        var tail = 0;
        while (tail < most - head
            && stretches[^(tail + 1)].Length == _stretches[^(tail + 1)].Length
            && written.AsSpan(stretches[^(tail + 1)].Start, stretches[^(tail + 1)].Length)
                .SequenceEqual(_written.AsSpan(_stretches[^(tail + 1)].Start, _stretches[^(tail + 1)].Length)))
        {
            tail++;
        }

        return (head, tail);
    }

    /// <summary>Fills the place of old stretches with new ones: each keeps its own where there are as many, else all share alike.</summary>
    private static void Share(ReadOnlySpan<Stretch> changed, ReadOnlySpan<Stretch> old, int room, ImmutableArray<Stretch>.Builder laid)
    {
        var keeps = changed.Length == old.Length;
        for (var i = 0; keeps && i < changed.Length; i++)
        {
            keeps = changed[i].Length <= old[i].Length + old[i].Slack;
        }

        for (var i = 0; i < changed.Length; i++)
        {
            var slack = keeps ? old[i].Length + old[i].Slack - changed[i].Length
                : i + 1 < changed.Length ? room / changed.Length
                : room - (room / changed.Length * (changed.Length - 1));
            laid.Add(changed[i] with { Slack = slack });
        }
    }

    private static int Length(ReadOnlySpan<Stretch> stretches)
    {
        var length = 0;
        foreach (var stretch in stretches)
        {
            length += stretch.Length;
        }

        return length;
    }

    private static Stretch WithSlack(Stretch stretch) => stretch with { Slack = LeastSlack + (stretch.Length / 2) };

    /// <summary>The text by its declarations, each with what follows it up to the next; the first with what stands before it.</summary>
    private static List<Stretch> Split(string written)
    {
        var stretches = new List<Stretch>();
        var start = 0;
        for (var line = 0; written.AsSpan(line).IndexOf('\n') is >= 0 and var length;)
        {
            line += length + 1;
            if (IsOpened(written.AsSpan(line)))
            {
                stretches.Add(new Stretch(start, line - start, 0));
                start = line;
            }
        }

        stretches.Add(new Stretch(start, written.Length - start, 0));
        return stretches;
    }

    private static bool IsOpened(ReadOnlySpan<char> line)
    {
        if (line.IsEmpty || !char.IsAsciiLetterLower(line[0]))
        {
            return false;
        }

        foreach (var opener in Openers)
        {
            if (line.StartsWith(opener, StringComparison.Ordinal) && line.Length > opener.Length && line[opener.Length] == ' ')
            {
                return true;
            }
        }

        return false;
    }

    private static int BreakBefore(string text, int end) => end >= 2 && text[end - 2] == '\r' ? 2 : 1;

    private readonly record struct Stretch(int Start, int Length, int Slack);
}
