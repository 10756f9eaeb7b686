using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace ProcScript.Cli.Verbs;

/// <summary>
/// The names under which files are written before they get their own, and what a run that was killed left behind under such names. The
/// name tells the machine and the process: what belongs to a run that still goes on is its own.
/// </summary>
internal static partial class LeftoverFiles
{
    private static readonly TimeSpan SurelyOver = TimeSpan.FromDays(1);

    private const int LongestName = 200;

    private static readonly string Machine = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Environment.MachineName)))[..8];

    /// <summary>A new name in the folder of a file: hidden, and no source of any library.</summary>
    public static string NameFor(string path) => Path.Combine(
        Path.GetDirectoryName(path)!,
        string.Create(CultureInfo.InvariantCulture, $".{Short(Path.GetFileName(path))}.{Machine}-{Environment.ProcessId}-{Guid.NewGuid().ToString("N")[..8]}.tmp"));

    /// <summary>As much of a name as leaves room for what is put to it: file systems take some 255 bytes.</summary>
    private static string Short(string name)
    {
        while (Encoding.UTF8.GetByteCount(name) > LongestName)
        {
            name = name[..^Math.Max(1, (Encoding.UTF8.GetByteCount(name) - LongestName) / 4)];
        }

        return char.IsHighSurrogate(name[^1]) ? name[..^1] : name;
    }

    /// <summary>Removes what killed runs left in a folder. What cannot be removed stays: it is in nobody's way.</summary>
    public static void Clean(string folder)
    {
        try
        {
            foreach (var file in new DirectoryInfo(folder).EnumerateFiles(".*.tmp").Where(IsLeft))
            {
                file.Delete();
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // Another run may have been quicker, or the folder may be somebody else's.
        }
    }

    private static bool IsLeft(FileInfo file)
    {
        if (Name().Match(file.Name) is not { Success: true } match)
        {
            return false;
        }

        var isOurs = match.Groups["machine"].Value == Machine;
        return (isOurs && !IsRunning(int.Parse(match.Groups["process"].ValueSpan, CultureInfo.InvariantCulture)))
            || DateTime.UtcNow - file.LastWriteTimeUtc > SurelyOver;
    }

    private static bool IsRunning(int process)
    {
        try
        {
            using var found = Process.GetProcessById(process);
            return !found.HasExited;
        }
        catch (Exception failure) when (failure is ArgumentException or InvalidOperationException)
        {
            return false;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            // There is one, of somebody else.
            return true;
        }
    }

    [GeneratedRegex(@"^\..+\.(?<machine>[0-9a-f]{8})-(?<process>[0-9]{1,9})-[0-9a-f]{8}\.tmp$", RegexOptions.CultureInvariant)]
    private static partial Regex Name();
}
