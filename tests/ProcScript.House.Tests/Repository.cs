namespace ProcScript.House.Tests;

/// <summary>The checkout that the tests were built in, as files to read.</summary>
internal static class Repository
{
    private static readonly string[] BuildFolders = ["bin", "obj", "node_modules"];

    public static string Root => Checkout.Root;

    /// <summary>Every file under a folder, build output aside, as paths from the root with forward slashes, in order.</summary>
    public static IReadOnlyList<string> Files(string folder, string pattern)
    {
        var start = Path.Combine(Root, folder);
        return !Directory.Exists(start)
            ? []
            : [.. Directory.EnumerateFiles(start, pattern, SearchOption.AllDirectories)
                .Select(FromRoot)
                .Where(path => !path.Split('/').Intersect(BuildFolders).Any())
                .Order(StringComparer.Ordinal)];
    }

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    public static string[] Lines(string path) => File.ReadAllLines(Path.Combine(Root, path));

    public static bool Exists(string path)
    {
        var full = Path.Combine(Root, path);
        return File.Exists(full) || Directory.Exists(full);
    }

    private static string FromRoot(string path) => Path.GetRelativePath(Root, path).Replace('\\', '/');
}
