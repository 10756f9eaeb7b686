using System.Security.Cryptography;
using System.Text;

namespace ProcScript.Floor.Index;

/// <summary>Where the index of a shop's jobs lies: on this machine, for a share can hold no database that several servers write.</summary>
internal static class IndexPlace
{
    private const string Own = "procscript-floor";
    private const int NameLength = 16;

    /// <summary>The folder of what this machine's user can do without; null where there is none.</summary>
    public static string? UsualFolder() =>
        (OperatingSystem.IsWindows() ? Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData)
            : OperatingSystem.IsMacOS() ? Below("Library/Caches")
            : Environment.GetEnvironmentVariable("XDG_CACHE_HOME") is { Length: > 0 } set && Path.IsPathFullyQualified(set) ? set
            : Below(".cache")) is { Length: > 0 } folder ? Path.Combine(folder, Own) : null;

    /// <summary>The file of one shop's jobs.</summary>
    /// <param name="folder">The folder of indexes, as a full path.</param>
    /// <param name="jobs">Whose jobs they are: a folder, or a database.</param>
    public static string File(string folder, string jobs) =>
        Path.Combine(folder, $"board-{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(jobs)))[..NameLength]}.sqlite");

    private static string? Below(string path) =>
        Environment.GetFolderPath(Environment.SpecialFolder.UserProfile) is { Length: > 0 } home ? Path.Combine(home, path) : null;
}
