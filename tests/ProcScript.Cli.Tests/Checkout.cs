namespace ProcScript.Cli.Tests;

/// <summary>The checkout that the tests were built in.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find();

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

        throw new InvalidOperationException("The tests do not run inside a checkout.");
    }
}
