namespace ProcScript.Tests;

/// <summary>
/// How often a test repeats what it makes up at random. A plain <c>dotnet test</c> takes a quarter, so that it stays quick; the checks of a
/// change set the environment variable <c>PROCSCRIPT_TESTS</c> to <c>all</c>.
/// </summary>
internal static class Depth
{
    /// <summary>Whether every repetition is wanted.</summary>
    public static bool IsWhole { get; } = Environment.GetEnvironmentVariable("PROCSCRIPT_TESTS") == "all";

    /// <summary>How many of so many repetitions are wanted.</summary>
    public static int Of(int all) => IsWhole ? all : Math.Max(1, all / 4);
}
