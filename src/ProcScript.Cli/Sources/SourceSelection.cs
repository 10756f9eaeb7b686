using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Cli.Sources;

/// <summary>The files that the user asked about, found and placed in their library.</summary>
/// <param name="Root">The library's root folder, as a full path.</param>
/// <param name="Paths">The files, relative to the root with forward slashes, in ordinal order, each once.</param>
/// <param name="StandardInput">The path that the standard input has in the library, or null where it is not read.</param>
internal sealed record SourceSelection(string Root, ImmutableArray<string> Paths, string? StandardInput)
{
    /// <summary>How the standard input is named to the user.</summary>
    public const string StandardInputName = "<stdin>";

    private const string StandardInputArgument = "-";

    /// <summary>Whether the user asked about the root folder, and so about all that lies below it.</summary>
    public bool IsWhole { get; init; }

    private readonly FrozenSet<string> _given = Paths.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Whether the user asked about this file, or it is only used by one that he asked about.</summary>
    public bool IsGiven(string path) => _given.Contains(path);

    /// <summary>Whether the changed standard input is to be the output, and nothing else is: a verb that writes files has nowhere else to write that.</summary>
    /// <param name="writes">Whether the verb writes, and does not only show what it would.</param>
    /// <exception cref="UsageException">Files were named beside it.</exception>
    public bool IsForOutput(bool writes) =>
        StandardInput is not null && writes && (Paths.Length == 1 ? true : throw new UsageException("'-' stands alone: its text is all that is written to the output."));

    /// <summary>Finds what was asked for.</summary>
    /// <exception cref="UsageException">Something named is not there, or holds nothing to read.</exception>
    public static SourceSelection Find(InputRequest request, string currentFolder)
    {
        var folders = new List<string>();
        var files = new List<string>();
        string? standardInput = null;
        foreach (var path in request.Paths)
        {
            if (path == StandardInputArgument)
            {
                standardInput = Path.Combine(currentFolder, StandardInputName);
                files.Add(standardInput);
                folders.Add(currentFolder);
            }
            else
            {
                Add(path, currentFolder, folders, files);
            }
        }

        var root = RootFolder(request.Root, folders, currentFolder);
        return new SourceSelection(
            root,
            [.. files.Select(file => RelativePath.Inside(root, file)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            standardInput is null ? null : RelativePath.Inside(root, standardInput))
        {
            IsWhole = request.Paths.Any(path => path != StandardInputArgument && FullPath(path, currentFolder) == root),
        };
    }

    private static void Add(string path, string currentFolder, List<string> folders, List<string> files)
    {
        var full = FullPath(path, currentFolder);
        if (Directory.Exists(full))
        {
            var before = files.Count;
            files.AddRange(ProcFiles.In(full));
            folders.Add(full);
            if (files.Count == before)
            {
                throw new UsageException($"the folder '{path}' holds no .proc file.");
            }
        }
        else if (File.Exists(full))
        {
            files.Add(full);
            folders.Add(Path.GetDirectoryName(full)!);
        }
        else
        {
            throw new UsageException($"there is no file or folder '{path}'.");
        }
    }

    private static string RootFolder(string? typed, List<string> folders, string currentFolder)
    {
        if (typed is null)
        {
            return LibraryFolder.Find(folders, currentFolder);
        }

        var root = FullPath(typed, currentFolder);
        if (!Directory.Exists(root))
        {
            throw new UsageException($"the library root '{typed}' is not a folder.");
        }

        var outside = folders.Find(folder => !LibraryFolder.Holds(root, folder));
        return outside is null ? root : throw new UsageException($"'{outside}' is not inside the library root '{typed}'.");
    }

    private static string FullPath(string path, string currentFolder)
    {
        if (path.Length == 0 || path.Contains('\0'))
        {
            throw new UsageException("an empty path names no file or folder.");
        }

        return Path.TrimEndingDirectorySeparator(Path.GetFullPath(path, currentFolder));
    }
}
