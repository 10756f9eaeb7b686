namespace ProcScript.Floor.Doors;

/// <summary>A file that nobody but the server's own user may read.</summary>
internal static class OwnerFile
{
    /// <summary>Writes it whole, or not at all.</summary>
    public static void Write(string path, ReadOnlySpan<byte> content)
    {
        var temporary = $"{path}.{Guid.NewGuid():N}.new";
        try
        {
            using (FileStream file = new(temporary, Options()))
            {
                file.Write(content);
                file.Flush(flushToDisk: true);
            }

            File.Move(temporary, path, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }

    /// <summary>Makes a folder that nobody else may look into.</summary>
    public static void MakeFolder(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(path);
        }
        else
        {
            Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    private static FileStreamOptions Options()
    {
        FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        return options;
    }
}
