using System.Security.Cryptography;
using System.Text;

namespace ProcScript.Cli.Watching;

/// <summary>A page as it is served: with the script that loads it again. The file on the disk has none.</summary>
internal static class LivePage
{
    /// <summary>Where the script hears of changes.</summary>
    public const string ChangesPath = "/_changes";

    /// <summary>The page with the script, let in by the page's own policy, which lets nothing else in that it did not before.</summary>
    /// <param name="page">The page as it lies on the disk.</param>
    /// <param name="build">The number of the build that it is from: the page is loaded again once there is another.</param>
    public static string Of(string page, int build)
    {
        var script = FormattableString.Invariant($"new EventSource('{ChangesPath}').onmessage = built => built.data === '{build}' || location.reload();");
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)));
        var allowed = page.Replace("script-src ", $"connect-src 'self'; script-src 'sha256-{hash}' ", StringComparison.Ordinal);
        var end = allowed.LastIndexOf("</body>", StringComparison.OrdinalIgnoreCase);
        return allowed.Insert(end < 0 ? allowed.Length : end, $"<script>{script}</script>\n");
    }
}
