using System.Globalization;
using ProcScript.Bench.Libraries;
using ProcScript.Bench.Runs;

namespace ProcScript.Bench.Editing;

/// <summary>The language server at work on a file of five thousand lines, by itself and in a library of a hundred thousand.</summary>
internal static class EditorBench
{
    /// <summary>Publishes the program, natively unless told otherwise, and prints the tables.</summary>
    /// <param name="how">Empty for the native program, <c>jit</c>, or the path of a program that is there already.</param>
    public static void Run(string how)
    {
        var scratch = Directory.CreateTempSubdirectory("procscript-bench-");
        try
        {
            var program = how switch
            {
                "" => Programs.Native(scratch.FullName),
                "jit" => Programs.Jit(scratch.FullName),
                _ => [how],
            };
            var libraries = new[] { 5, 1000 }.Select(files => Write(scratch.FullName, files)).ToList();
            EditLatency.PrintHead();
            foreach (var (name, folder, path) in libraries)
            {
                EditLatency.Measure(name, program, folder, path);
            }

            Console.WriteLine();
            EditMemory.PrintHead();
            foreach (var (name, folder, path) in libraries)
            {
                EditMemory.Measure(name, program, folder, path);
            }
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    private static (string Name, string Folder, string Path) Write(string scratch, int files)
    {
        var folder = Path.Combine(scratch, files.ToString(CultureInfo.InvariantCulture));
        var (lines, text) = (LibraryWriter.WriteTo(folder, files), LongFile.Text());
        var path = Path.Combine(folder, "machine-0001", "long.proc");
        File.WriteAllText(path, text);
        var own = LongFile.LinesIn(text);
        return (string.Create(CultureInfo.InvariantCulture, $"{lines + own:N0} lines, of which {own:N0} in the file"), folder, path);
    }
}
