namespace ProcScript.Cli.Tests.Cases;

/// <summary>Compares what the program says with the file that holds what it should say.</summary>
internal static class Expected
{
    private const string UpdateVariable = "UPDATE_CASES";

    /// <summary>Whether the files are to be written and not compared: <c>UPDATE_CASES=1 dotnet test</c>.</summary>
    public static bool IsUpdating { get; } = Environment.GetEnvironmentVariable(UpdateVariable) == "1";

    public static void Compare(string path, string actual)
    {
        if (IsUpdating)
        {
            Assert.False(Environment.GetEnvironmentVariable("CI") == "true", $"{UpdateVariable} would make every case pass: it is not for a build server.");
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
            return;
        }

        var name = Path.GetRelativePath(Checkout.Root, path);
        Assert.True(File.Exists(path), $"{name} is missing; it would be, with {UpdateVariable}=1 in the environment:\n{actual}");
        var expected = File.ReadAllText(path).ReplaceLineEndings("\n");
        Assert.True(
            expected == actual,
            $"{name} says otherwise. If what follows is right, run again with {UpdateVariable}=1 and review the difference.\n{actual}");
    }
}
