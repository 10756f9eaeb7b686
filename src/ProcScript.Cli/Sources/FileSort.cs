using System.Formats.Tar;

namespace ProcScript.Cli.Sources;

/// <summary>
/// Tells files from what only has a place among them: devices, pipes, sockets. The system library says so in one place alone, the header
/// that an archive would have for them; it opens no pipe for that, where others would wait for somebody at its other end.
/// </summary>
internal static class FileSort
{
    private const int SortAt = 156;

    /// <summary>Whether what a path leads to is there and is neither a file nor a folder.</summary>
    public static bool IsSpecial(string path)
    {
        if (OperatingSystem.IsWindows() || !File.Exists(path))
        {
            return false;
        }

        try
        {
            FileInfo file = new(path);
            var target = file.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? file;
            // A link to what has no name, as those in /dev/fd, is an open pipe or socket. And only of files is the length known.
            return !target.Exists || (target.Length == 0 && !IsRegular(target.FullName));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static bool IsRegular(string path)
    {
        using MemoryStream archive = new();
        try
        {
            using TarWriter writer = new(archive, TarEntryFormat.Ustar, leaveOpen: true);
            writer.WriteEntry(path, "x");
        }
        catch (UnauthorizedAccessException)
        {
            // It is told what a file is before the file is opened.
            return true;
        }
        catch (IOException)
        {
            // A socket has no place in an archive.
            return false;
        }

        return archive.GetBuffer()[SortAt] == (byte)TarEntryType.RegularFile;
    }
}
