namespace ProcScript.Model.Tests;

/// <summary>The checkout that the tests run in.</summary>
internal static class Repository
{
    /// <summary>The folder of the solution.</summary>
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    private static string Find(string folder) =>
        File.Exists(Path.Combine(folder, "ProcScript.sln"))
            ? folder
            : Find(Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("The tests do not run in a checkout."));
}
