using System.Globalization;
using ProcScript.Bench.Libraries;

namespace ProcScript.Bench.Runs;

/// <summary>What a user waits for who asks how the deepest part of a machine of 2,000 parts and 10,000 joints is reached.</summary>
internal static class DeepReach
{
    private static readonly (int Layers, int Width)[] Sizes = [(400, 5), (100, 20), (20, 100)];

    /// <summary>Prints a table.</summary>
    /// <param name="program">A native program that is there already; null to publish one.</param>
    public static void Run(string? program)
    {
        var scratch = Directory.CreateTempSubdirectory("procscript-bench-");
        try
        {
            IReadOnlyList<string> start = program is null ? Programs.Native(scratch.FullName) : [program];
            Measurement.PrintHead();
            foreach (var (layers, width) in Sizes)
            {
                foreach (var hasChoices in (bool[])[true, false])
                {
                    var library = Directory.CreateDirectory(Path.Combine(scratch.FullName, string.Create(CultureInfo.InvariantCulture, $"{layers}-{hasChoices}"))).FullName;
                    File.WriteAllText(Path.Combine(library, "rig.proc"), LayeredMachine.Of(layers, width, 5, hasChoices));
                    var what = string.Create(CultureInfo.InvariantCulture, $"reach through {layers} layers of {width}{(hasChoices ? ", each either of two" : "")}");
                    Measurement.Print(what, "native", 0, () => ProcessRun.Of(start, "reach", LayeredMachine.Deepest(layers), "--in", library));
                }
            }
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }
}
