using System.Globalization;
using BenchmarkDotNet.Running;
using ProcScript.Bench.Editing;
using ProcScript.Bench.Libraries;
using ProcScript.Bench.Runs;

// whole [FILES…]      the program as a whole process, on libraries of these sizes
// peers [PROGRAM]     the native program (published here, or already) beside compilers and linters of other languages
// reach [PROGRAM]     how the deepest part of a machine of 2,000 parts is reached, by the native program
// write DIR FILES     one of these libraries, to look at or to profile
// editor [jit|PATH]   what somebody waits for who types, and the server's memory in an hour of it; of the native program, the other one, or one that is there already
// anything else       the benchmarks inside the process, with BenchmarkDotNet's own arguments
switch (args)
{
    case ["whole", .. var sizes]:
        WholeProcess.Run(sizes.Length == 0 ? [100, 1000, 10_000] : [.. sizes.Select(size => int.Parse(size, CultureInfo.InvariantCulture))]);
        break;
    case ["peers", .. var published]:
        BesidePeers.Run(published is [var path] ? [path] : null);
        break;
    case ["reach", .. var published]:
        DeepReach.Run(published is [var built] ? built : null);
        break;
    case ["write", var folder, var files]:
        var lines = LibraryWriter.WriteTo(folder, int.Parse(files, CultureInfo.InvariantCulture));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{lines} lines"));
        break;
    case ["editor", .. var how]:
        EditorBench.Run(how is [var program] ? program : "");
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}
