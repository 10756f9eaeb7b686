using System.Globalization;
using ProcScript.Bench.Libraries;

namespace ProcScript.Bench.Runs;

/// <summary>What a user waits for: the program from its start to its end, on libraries of growing size.</summary>
internal static class WholeProcess
{
    private const int OneFile = 2;

    /// <summary>Publishes the program both ways and prints a table.</summary>
    public static void Run(IReadOnlyCollection<int> sizes)
    {
        var scratch = Directory.CreateTempSubdirectory("procscript-bench-");
        try
        {
            (string Name, IReadOnlyList<string> Start)[] programs =
                [("JIT", Programs.Jit(scratch.FullName)), ("native", Programs.Native(scratch.FullName))];
            Measurement.PrintHead();
            foreach (var (name, start) in programs)
            {
                Measurement.Print("start (--version)", name, 0, () => ProcessRun.Of(start, "--version"));
            }

            foreach (var files in sizes.Prepend(OneFile))
            {
                var library = Path.Combine(scratch.FullName, files.ToString(CultureInfo.InvariantCulture));
                var lines = LibraryWriter.WriteTo(library, files);
                var what = string.Create(CultureInfo.InvariantCulture, $"check {files:N0} files, {lines:N0} lines");
                foreach (var (name, start) in programs)
                {
                    Measurement.Print(what, name, lines, () => ProcessRun.Of(start, "check", library, "--no-cache"));
                }
            }
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }
}
