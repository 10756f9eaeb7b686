namespace ProcScript.LanguageServer.Workspaces;

/// <summary>The way between the addresses of the protocol and the paths of the disk.</summary>
internal static class DocumentUri
{
    private const string Scheme = "file://";

    /// <summary>The full path that an address means; null where it means no file.</summary>
    public static string? ToPath(string uri) =>
        Uri.TryCreate(uri, UriKind.Absolute, out var parsed) && parsed.IsFile && uri.StartsWith("file:", StringComparison.OrdinalIgnoreCase)
            ? Path.TrimEndingDirectorySeparator(parsed.LocalPath)
            : null;

    /// <summary>The address of a full path.</summary>
    public static string FromPath(string path)
    {
        var segments = path.Replace(Path.DirectorySeparatorChar, '/').Split('/').Select(Uri.EscapeDataString);
        var joined = string.Join('/', segments);
        return joined.StartsWith('/') ? Scheme + joined : $"{Scheme}/{joined}";
    }
}
