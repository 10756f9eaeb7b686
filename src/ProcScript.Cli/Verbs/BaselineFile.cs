using ProcScript.Analysis.Baselines;
using ProcScript.Cli.Sources;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Verbs;

/// <summary>A baseline on the disk.</summary>
internal static class BaselineFile
{
    /// <summary>Reads one.</summary>
    /// <param name="path">The file, as typed.</param>
    /// <param name="root">The library's root.</param>
    /// <param name="currentFolder">Where the user stands.</param>
    /// <exception cref="UsageException">It cannot be read, or is no baseline.</exception>
    public static Baseline Read(string path, string root, string currentFolder)
    {
        var full = Path.GetFullPath(path, currentFolder);
        var reading = SourceBytes.ReadFile(full);
        if (reading.Content is not { } content)
        {
            throw new UsageException(reading.Outcome == SourceOutcome.Missing
                ? $"there is no baseline '{path}'; 'procscript baseline write PATH -o {path}' writes one."
                : $"cannot read the baseline '{path}': {(reading.Detail.Length > 0 ? reading.Detail : "it is no text.")}");
        }

        try
        {
            return Baseline.Read(new SourceText(RelativePath.Inside(root, full), content));
        }
        catch (BaselineException fault)
        {
            throw new UsageException($"'{path}' is no baseline: {fault.Message}. Restore it, or write it anew with 'procscript baseline write'.");
        }
    }
}
