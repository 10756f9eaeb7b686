using System.Globalization;
using ProcScript.Bench.Libraries;
using ProcScript.Bench.Peers;

namespace ProcScript.Bench.Runs;

/// <summary>The native program beside compilers and linters of other languages, on as many files of as many lines, in one run.</summary>
internal static class BesidePeers
{
    private const int Files = 1000;
    private const int BicepFiles = 200;
    private const int Starts = 20;
    private const string FirstCore = "0";

    /// <summary>Publishes the program, fetches the peers and prints two tables: what a start takes, and what a library takes.</summary>
    /// <param name="published">How the program is started, where it is published already.</param>
    public static void Run(IReadOnlyList<string>? published)
    {
        var scratch = Directory.CreateTempSubdirectory("procscript-peers-");
        try
        {
            var program = published ?? Programs.Native(scratch.FullName);
            var peers = PeerPrograms.Fetch(Path.Combine(scratch.FullName, "peers")).ToList();
            var small = Path.Combine(scratch.FullName, "small");
            var large = Path.Combine(scratch.FullName, "large");
            LibraryWriter.WriteTo(small, 1);
            var lines = LibraryWriter.WriteTo(large, Files);

            Measurement.PrintHead();
            Measurement.Print("--version", "procscript", 0, () => ProcessRun.Of(program, "--version"), Starts);
            Measurement.Print("check of one small file", "procscript", 0, () => ProcessRun.Of(program, "check", small), Starts);
            foreach (var peer in peers)
            {
                Measurement.Print("--version", peer.Name, 0, () => ProcessRun.Of([peer.Program], "--version"), Starts);
            }

            Console.WriteLine();
            Measurement.PrintHead();
            Check("procscript, no cache", [.. program, "check"], [large, "--no-cache"], Files, lines);
            Check("procscript, warm cache", [.. program, "check"], [large, "--cache", Path.Combine(scratch.FullName, "cache")], Files, lines);
            foreach (var peer in peers)
            {
                var files = peer.Name.StartsWith("bicep", StringComparison.Ordinal) ? BicepFiles : Files;
                var folder = Path.Combine(scratch.FullName, peer.Name);
                peer.Write(folder, files);
                Check(peer.Name, [peer.Program], peer.Check(folder), files, LinesBelow(folder));
            }
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    private static void Check(string name, IReadOnlyList<string> program, IReadOnlyList<string> arguments, int files, int lines)
    {
        var what = string.Create(CultureInfo.InvariantCulture, $"{files:N0} files, {lines:N0} lines");
        Measurement.Print(what, name, lines, () => ProcessRun.Of(program, arguments));
        Measurement.Print($"{what}, one core", name, lines, () => ProcessRun.Of(["taskset", "-c", FirstCore, .. program], arguments));
    }

    private static int LinesBelow(string folder) => Directory
        .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .Sum(file => File.ReadLines(file).Count());
}
