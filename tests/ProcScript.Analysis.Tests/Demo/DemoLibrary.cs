using System.Collections.Immutable;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Demo;

/// <summary>The demo library in <c>procedures/</c>, read once.</summary>
internal static class DemoLibrary
{
    private static readonly string Root = Path.Combine(AppContext.BaseDirectory, "procedures");

    /// <summary>Every file by its path in the library.</summary>
    public static ImmutableSortedDictionary<string, string> Files { get; } = Read("*.proc");

    /// <summary>The drawings that its cards show, beside every choice of files.</summary>
    private static readonly ImmutableSortedDictionary<string, string> Pictures = Read("*.svg");

    /// <summary>The whole library, checked.</summary>
    public static LibraryReport Report { get; } = Check(Files);

    /// <summary>The folders that hold a machine.</summary>
    public static IEnumerable<string> MachineFolders => Files.Keys
        .Select(FolderOf)
        .Where(folder => folder != "catalog")
        .Distinct(StringComparer.Ordinal);

    /// <summary>The files of every procedure that a file is a part of: nothing else can change with it.</summary>
    public static IEnumerable<KeyValuePair<string, string>> FilesThatConcern(string path) => Report.Procedures
        .Select(procedure => procedure.Procedure.Files)
        .Where(files => files.Contains(path))
        .SelectMany(files => files)
        .Distinct(StringComparer.Ordinal)
        .Select(file => KeyValuePair.Create(file, Files[file]));

    public static LibraryReport Check(IEnumerable<KeyValuePair<string, string>> files) => LibraryCheck.Run(new MemorySourceStore([.. files, .. Pictures]));

    private static ImmutableSortedDictionary<string, string> Read(string pattern) => Directory
        .EnumerateFiles(Root, pattern, SearchOption.AllDirectories)
        .ToImmutableSortedDictionary(
            path => Path.GetRelativePath(Root, path).Replace('\\', '/'),
            File.ReadAllText,
            StringComparer.Ordinal);

    public static string FolderOf(string path) => path[..path.IndexOf('/', StringComparison.Ordinal)];

    /// <summary>A finding on one line, with all that it says.</summary>
    public static string Words(ReportedFinding reported)
    {
        var finding = reported.Finding;
        return string.Join(
            " | ",
            [finding.Primary.Path, finding.Rule.Code, finding.Message, finding.Label, .. finding.Related.Select(place => place.Label), finding.Help]);
    }
}
