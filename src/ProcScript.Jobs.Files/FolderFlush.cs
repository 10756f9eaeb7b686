using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace ProcScript.Jobs.Files;

/// <summary>
/// Has the disk keep what a folder lists. A file that was flushed is safe, and may still be called by no name after the power went: on Unix its folder is
/// flushed by itself. Windows keeps names safe without that.
/// </summary>
internal static partial class FolderFlush
{
    private const int ReadOnly = 0;

    /// <summary>Makes a folder with those above it, where they are not there, and has the disk keep them.</summary>
    /// <param name="folder">The folder, as a full path.</param>
    /// <exception cref="IOException">It cannot be made.</exception>
    public static void Make(string folder)
    {
        if (Directory.Exists(folder))
        {
            return;
        }

        if (Path.GetDirectoryName(folder) is { Length: > 0 } above)
        {
            Make(above);
            Directory.CreateDirectory(folder);
            Flush(above);
        }
    }

    /// <summary>Flushes a folder.</summary>
    /// <param name="folder">The folder, as a full path.</param>
    /// <exception cref="IOException">The disk has refused.</exception>
    public static void Flush(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using SafeFileHandle handle = new(Open(folder, ReadOnly), ownsHandle: true);
        if (!handle.IsInvalid)
        {
            // A share that flushes no folders answers with nothing: it keeps names as it keeps them.
            RandomAccess.FlushToDisk(handle);
        }
    }

    [LibraryImport("libc", EntryPoint = "open", StringMarshalling = StringMarshalling.Utf8, SetLastError = true)]
    private static partial int Open(string path, int flags);
}
