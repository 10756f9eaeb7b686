using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace ProcScript.Cli.Watching;

/// <summary>A page as it is served: with the script that loads it again. The file on the disk has none.</summary>
internal static partial class LivePage
{
    /// <summary>Where the script hears of changes.</summary>
    public const string ChangesPath = "/_changes";

    private const string Stale =
        "<p role=\"alert\"><strong>The sources have errors since the last change: this page may be from an earlier build.</strong> The terminal tells what is wrong.</p>";

    /// <summary>The page with the script, let in by the page's own policy, which lets nothing else in that it did not before.</summary>
    /// <param name="page">The page as it lies on the disk.</param>
    /// <param name="build">The number of the build that it is from: the page is loaded again once there is another.</param>
    /// <param name="isClean">Whether that build went through; else the page says that it may be older.</param>
    public static string Of(string page, int build, bool isClean)
    {
        var script = FormattableString.Invariant($"new EventSource('{ChangesPath}').onmessage = built => built.data === '{build}' || location.reload();");
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)));
        var allowed = page.Replace("script-src ", $"connect-src 'self'; script-src 'sha256-{hash}' ", StringComparison.Ordinal);
        var end = allowed.LastIndexOf("</body>", StringComparison.OrdinalIgnoreCase);
        var live = allowed.Insert(end < 0 ? allowed.Length : end, $"<script>{script}</script>\n");
        return isClean ? live : BodyStart().Replace(live, $"$0\n{Stale}", count: 1);
    }

    [GeneratedRegex("<body[^>]*>", RegexOptions.IgnoreCase)]
    private static partial Regex BodyStart();
}
