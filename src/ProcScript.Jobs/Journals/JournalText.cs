using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace ProcScript.Jobs.Journals;

/// <summary>
/// A journal as it lies on a disk: UTF-8, a line an event. A line is a JSON object whose last member is <c>hash</c>: the SHA-256 of the bytes of
/// the line before <c>,"hash"</c>. The member before it, <c>previous</c>, is the hash of the line before. So a change to any line
/// shows, and so does one that is taken out. That lines are missing at the end shows only to who has noted the last hash: reports print it.
/// </summary>
public static class JournalText
{
    /// <summary>No line may be longer, in bytes: what is longer is no event of ours.</summary>
    public const int LongestLine = 64 * 1024;

    private static readonly byte[] BeforeHash = ",\"hash\":\""u8.ToArray();
    private static readonly byte[] AfterHash = "\"}"u8.ToArray();

    /// <summary>What stands as the previous hash of the first line.</summary>
    public static string NoHash { get; } = new('0', HashLength);

    private const int HashLength = 2 * SHA256.HashSizeInBytes;

    /// <summary>Writes an event as a line, with its line break.</summary>
    /// <param name="happened">The event; its number and the previous hash are put in here.</param>
    /// <param name="last">The line before; null where it is the first.</param>
    /// <exception cref="ArgumentException">The line would be too long.</exception>
    public static JournalLine Write(JobEvent happened, JournalLine? last)
    {
        ArgumentNullException.ThrowIfNull(happened);
        var numbered = happened with { Number = (last?.Event.Number ?? 0) + 1, Previous = last?.Hash ?? NoHash };
        var json = JsonSerializer.SerializeToUtf8Bytes(numbered, JournalJson.Published.JobEvent);
        var body = json.AsSpan(0, json.Length - 1);
        var hash = Convert.ToHexStringLower(SHA256.HashData(body));
        byte[] bytes = [.. body, .. BeforeHash, .. Encoding.ASCII.GetBytes(hash), .. AfterHash, (byte)'\n'];
        return bytes.Length > LongestLine
            ? throw new ArgumentException($"an event takes {bytes.Length} bytes; a line of a journal has room for {LongestLine}.", nameof(happened))
            : new JournalLine(numbered, hash, bytes);
    }

    /// <summary>Reads a journal as far as it holds.</summary>
    /// <param name="bytes">All of it.</param>
    public static JournalReading Read(ReadOnlySpan<byte> bytes) => ReadOn(bytes, null);

    /// <summary>Reads what stands after a line.</summary>
    /// <param name="bytes">What stands after it.</param>
    /// <param name="last">The line; null at the start.</param>
    public static JournalReading ReadOn(ReadOnlySpan<byte> bytes, JournalLine? last)
    {
        var lines = ImmutableArray.CreateBuilder<JournalLine>();
        var (start, number) = (0, last?.Event.Number ?? 0);
        while (start < bytes.Length)
        {
            var length = bytes[start..].IndexOf((byte)'\n');
            if (length < 0)
            {
                // The power went, or the program, while the line was written: nobody was told that it is safe.
                return new JournalReading(lines.ToImmutable(), start, null, bytes.Length - start);
            }

            var line = bytes.Slice(start, length);
            if (Line(line, last, out var read) is { } wrong)
            {
                return new JournalReading(lines.ToImmutable(), start, new JournalFault(number + 1, wrong), 0);
            }

            lines.Add(last = read!);
            (start, number) = (start + length + 1, number + 1);
        }

        return new JournalReading(lines.ToImmutable(), start, null, 0);
    }

    /// <summary>What is wrong with a line; null where nothing is.</summary>
    private static string? Line(ReadOnlySpan<byte> line, JournalLine? last, out JournalLine? read)
    {
        read = null;
        var tail = BeforeHash.Length + HashLength + AfterHash.Length;
        if (line.Length <= tail || !line[^tail..].StartsWith(BeforeHash) || !line.EndsWith(AfterHash))
        {
            return "it does not end with its hash";
        }

        var body = line[..^tail];
        var hash = Encoding.ASCII.GetString(line[^(HashLength + AfterHash.Length)..^AfterHash.Length]);
        if (Convert.ToHexStringLower(SHA256.HashData(body)) != hash)
        {
            return "its hash is another: it was changed after it was written";
        }

        JobEvent happened;
        try
        {
            happened = JsonSerializer.Deserialize([.. body, (byte)'}'], JournalJson.Published.JobEvent)!;
        }
        catch (JsonException fault)
        {
            return $"it is no event that this version knows: {fault.Message}";
        }

        if (happened.Previous != (last?.Hash ?? NoHash) || happened.Number != (last?.Event.Number ?? 0) + 1)
        {
            return "it does not follow the line before: a line was taken out, put in or moved";
        }

        read = new JournalLine(happened, hash, (byte[])[.. line, (byte)'\n']);
        return null;
    }
}

/// <summary>A line of a journal.</summary>
/// <param name="Event">What it says.</param>
/// <param name="Hash">Its hash.</param>
/// <param name="Bytes">The line with its line break.</param>
public sealed record JournalLine(JobEvent Event, string Hash, ReadOnlyMemory<byte> Bytes);

/// <summary>A journal as far as it holds.</summary>
/// <param name="Lines">The lines that hold, from the first.</param>
/// <param name="Length">How many bytes these are.</param>
/// <param name="Fault">What is wrong with the next; null where nothing is.</param>
/// <param name="Torn">How many bytes stand after the last line break: what was being written when the power went.</param>
public sealed record JournalReading(ImmutableArray<JournalLine> Lines, int Length, JournalFault? Fault, int Torn);

/// <summary>What is wrong with a journal.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Problem">What, in words.</param>
public sealed record JournalFault(int Line, string Problem);
