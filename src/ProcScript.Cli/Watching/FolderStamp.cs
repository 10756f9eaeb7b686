using System.IO.Enumeration;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Sources;
using ProcScript.Model.Figures;

namespace ProcScript.Cli.Watching;

/// <summary>What the files of some folders look like from outside: their names, sizes and times of writing.</summary>
internal static class FolderStamp
{
    /// <summary>The stamp of the sources, settings and pictures below a folder, and of every file in another folder.</summary>
    /// <param name="root">The library.</param>
    /// <param name="other">The other folder, such as one of templates; null where there is none.</param>
    public static string Of(string root, string? other) => Of(root, IsRead) + Of(other, _ => true);

    private static string Of(string? folder, Func<string, bool> isRead)
    {
        if (folder is null)
        {
            return "";
        }

        FileSystemEnumerable<string> files = new(
            folder,
            (ref entry) => FormattableString.Invariant($"{entry.ToFullPath()}\0{entry.Length}\0{entry.LastWriteTimeUtc.Ticks}"),
            new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.None })
        {
            ShouldIncludePredicate = (ref entry) => !entry.IsDirectory && isRead(entry.FileName.ToString()),
            ShouldRecursePredicate = (ref entry) => entry.FileName[0] != '.' && !entry.Attributes.HasFlag(FileAttributes.ReparsePoint),
        };
        try
        {
            return string.Join('\n', files.Order(StringComparer.Ordinal));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // It is gone for the moment: a checkout of another state takes folders away and brings them back.
            return "";
        }
    }

    private static bool IsRead(string name) => ProcFiles.IsSource(name) || name == SettingsKeys.FileName || FigureFormats.ByName(name) is not null;
}
