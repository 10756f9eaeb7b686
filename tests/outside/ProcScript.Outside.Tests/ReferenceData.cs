namespace ProcScript.Outside.Tests;

/// <summary>
/// Published figures that are too long to repeat. They are not part of this repository: where somebody keeps a folder
/// <c>shared/reference/data</c> beside it, they are read there in place, and elsewhere the tests that need them say that they skip.
/// </summary>
internal static class ReferenceData
{
    private static readonly string? Folder = Find();

    /// <summary>The lines of a file without its comments, in columns.</summary>
    public static IReadOnlyList<string[]> Rows(string file)
    {
        Assert.SkipWhen(Folder is null, $"{file} is not here: no folder shared/reference/data stands beside the repository.");
        return
        [
            .. File.ReadLines(Path.Combine(Folder!, file))
                .Where(line => line.Length > 0 && line[0] != '#')
                .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)),
        ];
    }

    /// <summary>The comments of a file.</summary>
    public static IReadOnlyList<string> Comments(string file)
    {
        Assert.SkipWhen(Folder is null, $"{file} is not here: no folder shared/reference/data stands beside the repository.");
        return [.. File.ReadLines(Path.Combine(Folder!, file)).Where(line => line.StartsWith('#'))];
    }

    private static string? Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var data = Path.Combine(folder.FullName, "shared", "reference", "data");
            if (Directory.Exists(data))
            {
                return data;
            }
        }

        return null;
    }
}
