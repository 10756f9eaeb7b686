using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace ProcScript.Cli.Caching;

/// <summary>What a check printed, and what it was an answer to.</summary>
/// <param name="Question">The digest of all that the answer depends on besides the files that were read.</param>
/// <param name="Sources">Every file that was read, missing ones too, with the digest of what came of it.</param>
/// <param name="Code">The exit code.</param>
/// <param name="Text">The output.</param>
internal sealed record CachedAnswer(string Question, ImmutableArray<CachedSource> Sources, ExitCode Code, string Text)
{
    private const string Magic = "procscript answer 2";
    private const char SourceMark = 's';
    private const char FigureMark = 'f';

    /// <summary>The answer as a file. Its second line is the digest of all that follows: no other file is taken for an answer.</summary>
    public string Write()
    {
        StringBuilder body = new();
        body.Append(Question).Append('\n');
        body.Append(CultureInfo.InvariantCulture, $"{(int)Code} {Sources.Length}\n");
        foreach (var source in Sources)
        {
            body.Append(source.IsFigure ? FigureMark : SourceMark).Append(source.Digest).Append(' ').Append(source.Path).Append('\n');
        }

        var text = body.Append(Text).ToString();
        return $"{Magic}\n{DigestOf(text)}\n{text}";
    }

    /// <summary>Reads an answer; null where the file is cut off, damaged or something else.</summary>
    public static CachedAnswer? Read(string file)
    {
        Lines lines = new(file);
        if (lines.Next() != Magic || lines.Next() is not { } digest || digest != DigestOf(lines.Rest))
        {
            return null;
        }

        var question = lines.Next();
        if (question is null || lines.Next()?.Split(' ') is not [var code, var count] || !int.TryParse(code, out var exit) || !int.TryParse(count, out var many))
        {
            return null;
        }

        var sources = ImmutableArray.CreateBuilder<CachedSource>();
        for (var i = 0; i < many; i++)
        {
            if (lines.Next()?.Split(' ', 2) is not [[SourceMark or FigureMark, .. var of] marked, var path])
            {
                return null;
            }

            sources.Add(new CachedSource(path, of, marked[0] == FigureMark));
        }

        return new CachedAnswer(question, sources.ToImmutable(), (ExitCode)exit, lines.Rest);
    }

    private static string DigestOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private sealed class Lines(string text)
    {
        private int _at;

        /// <summary>What has not been read yet.</summary>
        public string Rest => text[_at..];

        /// <summary>The next line; null where none ends any more.</summary>
        public string? Next()
        {
            var end = text.IndexOf('\n', _at);
            if (end < 0)
            {
                return null;
            }

            var line = text[_at..end];
            _at = end + 1;
            return line;
        }
    }
}

/// <summary>A file that an answer was found from.</summary>
/// <param name="Path">Its path in the library.</param>
/// <param name="Digest">The digest of what came of reading it.</param>
/// <param name="IsFigure">Whether it was looked at as a picture, and not read as a text.</param>
internal readonly record struct CachedSource(string Path, string Digest, bool IsFigure);
