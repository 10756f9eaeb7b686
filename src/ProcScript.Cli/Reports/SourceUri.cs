namespace ProcScript.Cli.Reports;

/// <summary>Paths as addresses, whatever letters and slashes they are written with.</summary>
internal static class SourceUri
{
    /// <summary>The address of a path: relative where the path is, with forward slashes and all other than plain letters percent-encoded.</summary>
    public static string Of(string path)
    {
        var isDrive = path is [var letter, ':', '/' or '\\', ..] && char.IsAsciiLetter(letter);
        if (isDrive || path.StartsWith(@"\\", StringComparison.Ordinal))
        {
            var slashes = path.Replace('\\', '/');
            return isDrive ? $"file:///{slashes[..2]}{Encode(slashes[2..])}" : $"file:{Encode(slashes)}";
        }

        return path.StartsWith('/') ? $"file://{Encode(path)}" : Encode(path);
    }

    /// <summary>Whether an address counts from the root of the repository.</summary>
    public static bool IsRelative(string uri) => !uri.StartsWith("file:", StringComparison.Ordinal);

    private static string Encode(string path) => string.Join('/', path.Split('/').Select(Uri.EscapeDataString));
}
