using System.Text;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Sources;

/// <summary>Turns the bytes of a source into text: UTF-8, and nothing else is guessed.</summary>
internal static class SourceBytes
{
    /// <summary>
    /// The most that is read. The compiler's own limit counts characters, of which UTF-8 takes up to three bytes each; this one
    /// only keeps an endless input from filling the memory.
    /// </summary>
    public const int MostBytes = 64 << 20;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads to the end, without the mark that some editors put before the text.</summary>
    public static SourceReading Read(Stream stream)
    {
        if (!TryReadAll(stream, out var bytes))
        {
            return new SourceReading(null, SourceOutcome.TooLarge);
        }

        try
        {
            var text = bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
            return new SourceReading(Strict.GetString(text), SourceOutcome.Read);
        }
        catch (DecoderFallbackException failure)
        {
            return new SourceReading(null, SourceOutcome.NotText, WhatIsWrong(bytes, failure));
        }
    }

    /// <summary>The mark that the file at a full path begins with, as text: who writes the file anew keeps it. Empty where it has none.</summary>
    public static string MarkOf(string path)
    {
        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
            Span<byte> first = stackalloc byte[Encoding.UTF8.Preamble.Length];
            return file.ReadAtLeast(first, first.Length, throwOnEndOfStream: false) == first.Length && first.SequenceEqual(Encoding.UTF8.Preamble) ? "\uFEFF" : "";
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    /// <summary>Reads the file at a full path.</summary>
    public static SourceReading ReadFile(string path)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
            return Read(file);
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            return new SourceReading(null, SourceOutcome.Missing);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return new SourceReading(null, SourceOutcome.Unreadable, Directory.Exists(path) ? "It is a folder." : failure.Message);
        }
    }

    private static bool TryReadAll(Stream stream, out ReadOnlySpan<byte> bytes)
    {
        // A file of known length is read in one go; a pipe has none, and a file may grow meanwhile.
        var buffer = new byte[stream.CanSeek ? Math.Min(stream.Length, MostBytes) + 1 : 1 << 16];
        var count = 0;
        int read;
        while ((read = stream.Read(buffer, count, buffer.Length - count)) > 0)
        {
            count += read;
            if (count > MostBytes)
            {
                bytes = default;
                return false;
            }

            if (count == buffer.Length)
            {
                Array.Resize(ref buffer, buffer.Length * 2);
            }
        }

        bytes = buffer.AsSpan(0, count);
        return true;
    }

    private static string WhatIsWrong(ReadOnlySpan<byte> bytes, DecoderFallbackException failure)
    {
        if (bytes.StartsWith(Encoding.Unicode.Preamble) || bytes.StartsWith(Encoding.BigEndianUnicode.Preamble))
        {
            return "It is saved as UTF-16; save it as UTF-8.";
        }

        var wrong = failure.BytesUnknown is [var first, ..] ? $" (0x{first:X2})" : "";
        return $"Byte {failure.Index + 1}{wrong} is not UTF-8; save it as UTF-8.";
    }
}
