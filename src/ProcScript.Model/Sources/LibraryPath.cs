namespace ProcScript.Model.Sources;

/// <summary>Paths inside a library: relative to its root, parted by forward slashes, without <c>.</c> and <c>..</c>.</summary>
public static class LibraryPath
{
    /// <summary>The path in its one spelling, or null where it leaves the root or is absolute.</summary>
    public static string? Normalize(string path) => Combine("", path);

    /// <summary>
    /// Resolves a path as written in the file at <paramref name="from"/>, or gives null where it leaves the root or is absolute.
    /// </summary>
    public static string? Resolve(string from, string path)
    {
        var slash = from.LastIndexOf('/');
        return Combine(slash < 0 ? "" : from[..slash], path);
    }

    /// <summary>Whether a path says where it is on a disk, and not where it is from here.</summary>
    public static bool IsAbsolute(string path) =>
        path.StartsWith('/') || path.StartsWith('\\') || (path.Length > 1 && path[1] == ':' && char.IsAsciiLetter(path[0]));

    private static string? Combine(string folder, string path)
    {
        if (IsAbsolute(path))
        {
            return null;
        }

        var segments = new List<string>();
        if (folder.Length > 0)
        {
            segments.AddRange(folder.Split('/'));
        }

        foreach (var segment in path.Split('/', '\\'))
        {
            if (segment == "..")
            {
                if (segments.Count == 0)
                {
                    return null;
                }

                segments.RemoveAt(segments.Count - 1);
            }
            else if (segment is not ("" or "."))
            {
                segments.Add(segment);
            }
        }

        return string.Join('/', segments);
    }

    /// <summary>How the file at <paramref name="from"/> writes the path of another file of the library.</summary>
    public static string Relative(string from, string path)
    {
        var (here, there) = (from.Split('/'), path.Split('/'));
        var shared = 0;
        while (shared < here.Length - 1 && shared < there.Length - 1 && here[shared] == there[shared])
        {
            shared++;
        }

        return string.Join('/', Enumerable.Repeat("..", here.Length - 1 - shared).Concat(there[shared..]));
    }
}
