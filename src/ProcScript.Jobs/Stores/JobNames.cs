using System.Text;

namespace ProcScript.Jobs.Stores;

/// <summary>The names of jobs and of their files: nothing in them leads anywhere else, on whatever file system.</summary>
public static class JobNames
{
    /// <summary>The most letters of a name, or of one part of a path.</summary>
    public const int Longest = 100;

    /// <summary>Whether a text is the name of a job.</summary>
    /// <param name="name">The text.</param>
    public static bool IsName(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.Length is > 0 and <= Longest && name[0] is not ('.' or '-') && name[^1] != '.' && name.All(IsPlain);
    }

    /// <summary>Whether a text is the path of a file of a job: names with <c>/</c> between them.</summary>
    /// <param name="path">The text.</param>
    public static bool IsPath(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.Length <= 10 * Longest && path.Split('/').All(part =>
            part.Length is > 0 and <= 2 * Longest && part is not ("." or "..") && !part.Any(letter => char.IsControl(letter) || letter is '\\' or ':' or '*' or '?' or '"' or '<' or '>' or '|'));
    }

    /// <summary>A name made from words: what no name may have becomes a hyphen.</summary>
    /// <param name="words">The words.</param>
    public static string Of(params ReadOnlySpan<string> words)
    {
        var name = new StringBuilder();
        foreach (var word in words)
        {
            if (name.Length > 0 && word.Length > 0)
            {
                name.Append('-');
            }

            foreach (var letter in word)
            {
                name.Append(IsPlain(letter) ? letter : '-');
            }
        }

        var made = name.ToString().Trim('-', '.');
        return made.Length == 0 ? "job" : made.Length > Longest - 8 ? made[..(Longest - 8)].TrimEnd('-', '.') : made;
    }

    private static bool IsPlain(char letter) => char.IsAsciiLetterOrDigit(letter) || letter is '_' or '-' or '.';
}
