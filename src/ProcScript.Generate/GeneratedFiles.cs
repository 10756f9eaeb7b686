namespace ProcScript.Generate;

/// <summary>Compares what a generator makes with what the repository holds, and brings the repository up to date.</summary>
internal static class GeneratedFiles
{
    /// <summary>The files that differ, are missing or are left over, as paths from the root, in order.</summary>
    public static IReadOnlyList<string> Differences(string root, IGenerator generator, IReadOnlyList<GeneratedFile> files)
    {
        var changed = files.Where(file => !Holds(root, file)).Select(file => file.Path);
        return [.. changed.Concat(LeftOver(root, generator, files)).Order(StringComparer.Ordinal)];
    }

    /// <summary>Writes every file that differs and deletes what is left over.</summary>
    public static void Write(string root, IGenerator generator, IReadOnlyList<GeneratedFile> files)
    {
        foreach (var file in files.Where(file => !Holds(root, file)))
        {
            var path = Path.Combine(root, file.Path);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, file.Content);
        }

        foreach (var path in LeftOver(root, generator, files))
        {
            File.Delete(Path.Combine(root, path));
        }
    }

    private static bool Holds(string root, GeneratedFile file)
    {
        var path = Path.Combine(root, file.Path);
        return File.Exists(path) && string.Equals(File.ReadAllText(path), file.Content, StringComparison.Ordinal);
    }

    private static IEnumerable<string> LeftOver(string root, IGenerator generator, IReadOnlyList<GeneratedFile> files)
    {
        if (generator.OwnedFolder is not { } folder || !Directory.Exists(Path.Combine(root, folder)))
        {
            return [];
        }

        var made = files.Select(file => file.Path).ToHashSet(StringComparer.Ordinal);
        return Directory.EnumerateFiles(Path.Combine(root, folder), "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(root, path).Replace('\\', '/'))
            .Where(path => !made.Contains(path));
    }
}
