namespace ProcScript.Cli.Caching;

/// <summary>
/// Which build of the program this is. Two builds of one version differ, if only by the moment at which their files were written: what one
/// of them remembers says nothing about what the other would say.
/// </summary>
internal static class BuildIdentity
{
    /// <summary>The version, and the sizes and times of the program's own files.</summary>
    public static IEnumerable<string> Of(string programFolder)
    {
        yield return ProductVersion.Text;
        var files = new DirectoryInfo(programFolder)
            .EnumerateFiles()
            .Where(file => file.Name.StartsWith("procscript", StringComparison.OrdinalIgnoreCase))
            .OrderBy(file => file.Name, StringComparer.Ordinal);
        foreach (var file in files)
        {
            yield return FormattableString.Invariant($"{file.Name} {file.Length} {file.LastWriteTimeUtc.Ticks}");
        }
    }
}
