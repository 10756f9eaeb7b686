using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>The one file that a command writes, where <c>-o</c> says.</summary>
internal static class OutputFile
{
    private static readonly string[] OutputPaths = ["/dev/stdout", "/dev/fd/1", "/proc/self/fd/1"];

    /// <summary>Whether what was typed means the output: <c>-</c>, or its name among the devices.</summary>
    public static bool IsOutput(string typed) => typed == "-" || (!OperatingSystem.IsWindows() && OutputPaths.Contains(typed, StringComparer.Ordinal));

    /// <summary>Whether a file is there whose content counts.</summary>
    public static bool IsThere(string typed, Surroundings around) =>
        !IsOutput(typed) && Path.GetFullPath(typed, around.CurrentFolder) is var path && Path.Exists(path) && !FileSort.IsSpecial(path);

    /// <summary>Whether two names, as typed, are of one file.</summary>
    public static bool AreSame(string typed, string other, Surroundings around) =>
        RealPath.Of(Path.GetFullPath(typed, around.CurrentFolder)) == RealPath.Of(Path.GetFullPath(other, around.CurrentFolder));

    /// <summary>Refuses to write over what was read.</summary>
    /// <exception cref="UsageException">The file is an input.</exception>
    public static void RefuseInput(string typed, DiskSourceStore store, Surroundings around)
    {
        if (!IsOutput(typed) && store.IsInput(Path.GetFullPath(typed, around.CurrentFolder)))
        {
            throw new UsageException($"cannot write '{typed}': it is one of the files that are read. Nothing was written; name another file after -o.");
        }
    }

    /// <summary>Writes the file, or the output.</summary>
    /// <param name="typed">Where to, as typed.</param>
    /// <param name="text">What it gets.</param>
    /// <param name="store">What the text was made from: none of it is written over.</param>
    /// <param name="around">The run.</param>
    /// <returns>Where the command may say what it did: where the text itself went to the output, beside it.</returns>
    /// <exception cref="UsageException">It cannot be written, or is an input.</exception>
    public static TextWriter Write(string typed, string text, DiskSourceStore store, Surroundings around)
    {
        if (IsOutput(typed))
        {
            around.Output.Write(text);
            return around.Error;
        }

        RefuseInput(typed, store, around);
        using PendingFiles files = new();
        files.Add(Path.GetFullPath(typed, around.CurrentFolder), text);
        files.Commit(replace: true);
        return around.Output;
    }
}
