namespace ProcScript.Tests;

/// <summary>
/// How often a test repeats what it makes up at random. A plain <c>dotnet test</c> takes a quarter, so that it stays quick; with the
/// environment variable <c>PROCSCRIPT_TESTS</c> set to <c>all</c> it takes all.
/// </summary>
internal static class Depth
{
    /// <summary>Whether every repetition is wanted.</summary>
    public static bool IsWhole { get; } = Environment.GetEnvironmentVariable("PROCSCRIPT_TESTS") == "all";

    /// <summary>How many of so many repetitions are wanted.</summary>
    public static int Of(int all) => IsWhole ? all : Math.Max(1, all / 4);

    /// <summary>How many repetitions are wanted, or how many of them have to be of use, where a quarter of all takes too long.</summary>
    /// <param name="all">How many where every repetition is wanted.</param>
    /// <param name="few">How many in a plain run.</param>
    public static int Of(int all, int few) => IsWhole ? all : few;

    /// <summary>Whether a thing is looked at, of many that are alike.</summary>
    /// <param name="place">Its place among them.</param>
    /// <param name="oneIn">Of how many a plain run looks at one.</param>
    public static bool IsTaken(int place, int oneIn) => IsWhole || place % oneIn == 0;

    /// <summary>How many of the samples have to be of use at the least: of fewer, where chance counts for more, a tenth.</summary>
    public static int Least(int all) => IsWhole ? all : all / 10;
}
