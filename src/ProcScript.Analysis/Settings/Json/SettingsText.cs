using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Settings.Json;

/// <summary>
/// Reads the text of a settings file: JSON, in which <c>//</c> and <c>/* */</c> comments may stand, and a comma after the last member, for
/// people write it and want to say why. A text of nothing but blanks and comments chooses nothing.
/// </summary>
internal ref struct SettingsText
{
    private static readonly JsonReaderOptions Options = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    private readonly ReadOnlySpan<byte> _bytes;
    private Utf8JsonReader _reader;
    private int _byte;
    private int _character;

    private SettingsText(ReadOnlySpan<byte> bytes)
    {
        _bytes = bytes;
        _reader = new Utf8JsonReader(bytes, Options);
    }

    /// <summary>The value that a text holds; null where it chooses nothing.</summary>
    /// <exception cref="SettingsTextException">It is no JSON.</exception>
    public static SettingsNode? Read(string text)
    {
        var reader = new SettingsText(Encoding.UTF8.GetBytes(text));
        try
        {
            return reader.ReadFile();
        }
        catch (JsonException failure)
        {
            var line = (int)(failure.LineNumber ?? 0);
            throw new SettingsTextException(reader.Offset(line, (int)(failure.BytePositionInLine ?? 0)), Reason(failure.Message));
        }
        catch (InvalidOperationException)
        {
            throw new SettingsTextException(reader.Place(reader._reader.TokenStartIndex), "half of a pair of `\\u` escapes stands alone");
        }
    }

    private SettingsNode? ReadFile()
    {
        if (IsBlank())
        {
            return null;
        }

        _reader.Read();
        var node = ReadValue();
        _reader.Read();
        return node;
    }

    /// <summary>The reader refuses a text without a value, and does so only once it has passed all comments.</summary>
    private readonly bool IsBlank()
    {
        var probe = new Utf8JsonReader(_bytes, isFinalBlock: false, new JsonReaderState(Options));
        return !probe.Read() && probe.TokenType == JsonTokenType.None && _bytes[(int)probe.BytesConsumed..].Trim(" \t\r\n"u8).IsEmpty;
    }

    private SettingsNode ReadValue()
    {
        var start = Place(_reader.TokenStartIndex);
        switch (_reader.TokenType)
        {
            case JsonTokenType.StartObject:
                return ReadObject(start);
            case JsonTokenType.StartArray:
                var items = ImmutableArray.CreateBuilder<SettingsNode>();
                while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
                {
                    items.Add(ReadValue());
                }

                return new ListNode(From(start), items.ToImmutable());
            case JsonTokenType.String:
                var text = _reader.GetString()!;
                return new TextNode(From(start), text);
            case JsonTokenType.Number:
                return new NumberNode(From(start), _reader.TryGetDouble(out var number) ? number : double.NaN);
            default:
                return new WordNode(From(start), Encoding.UTF8.GetString(_reader.ValueSpan));
        }
    }

    private ObjectNode ReadObject(int start)
    {
        var members = ImmutableArray.CreateBuilder<SettingsMember>();
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndObject)
        {
            var keyStart = Place(_reader.TokenStartIndex);
            var key = _reader.GetString()!;
            // The colon is read with the key: the key ends where its own quotes do.
            var keySpan = TextSpan.FromBounds(keyStart, Place(_reader.TokenStartIndex + _reader.ValueSpan.Length + 2));
            _reader.Read();
            members.Add(new SettingsMember(key, keySpan, ReadValue()));
        }

        return new ObjectNode(From(start), members.ToImmutable());
    }

    private TextSpan From(int start) => TextSpan.FromBounds(start, Place(_reader.BytesConsumed));

    /// <summary>The character at a byte. Places are asked for from the front to the back, so that the whole takes one walk.</summary>
    private int Place(long at)
    {
        if (at < _byte)
        {
            (_byte, _character) = (0, 0);
        }

        _character += Encoding.UTF8.GetCharCount(_bytes[_byte..(int)at]);
        _byte = (int)at;
        return _character;
    }

    private int Offset(int line, int byteInLine)
    {
        var start = 0;
        for (; line > 0; line--)
        {
            start += _bytes[start..].IndexOf((byte)'\n') + 1;
        }

        return Place(Math.Min(start + byteInLine, _bytes.Length));
    }

    /// <summary>The system's words without its own account of the place and of other ways to read.</summary>
    private static string Reason(string message)
    {
        var end = message.IndexOf(" LineNumber:", StringComparison.Ordinal);
        var reason = (end < 0 ? message : message[..end]).TrimEnd('.');
        var aside = reason.IndexOf(" Change the reader options", StringComparison.Ordinal);
        return (aside < 0 ? reason : reason[..aside]).TrimEnd('.');
    }
}

/// <summary>A settings file is no JSON.</summary>
/// <param name="offset">The character where it ceases to be.</param>
/// <param name="reason">Why, in words.</param>
internal sealed class SettingsTextException(int offset, string reason) : Exception(reason)
{
    /// <summary>The character where it ceases to be JSON.</summary>
    public int Offset => offset;
}
