namespace ProcScript.Tests;

/// <summary>The checkout that the tests, the fuzzer or the benchmarks were built in.</summary>
internal static class Checkout
{
    /// <summary>The folder of the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>The folder of the cases.</summary>
    public static string Cases { get; } = Path.Combine(Root, "tests", "cases");

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "ProcScript.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("This does not run inside a checkout.");
    }
}
