namespace ProcScript.Cli.Tests;

/// <summary>A run of the program inside the test's own process.</summary>
internal sealed record CliRun(ExitCode Code, string Output, string Error)
{
    public static Task<CliRun> AtAsync(string folder, params string[] arguments) => AtAsync(folder, arguments, input: null);

    public static async Task<CliRun> AtAsync(
        string folder,
        string[] arguments,
        byte[]? input,
        Func<Surroundings, Surroundings>? change = null,
        CancellationToken? stop = null)
    {
        StringWriter output = new() { NewLine = "\n" };
        StringWriter error = new() { NewLine = "\n" };
        var around = InMemory.Surroundings(folder, output, error, input);
        var code = await CommandLine.RunAsync(arguments, change is null ? around : change(around), stop ?? TestContext.Current.CancellationToken);
        return new CliRun(code, output.ToString(), error.ToString());
    }

    /// <summary>What every run owes its user, however bad the input: a message of its own, and no stack trace.</summary>
    public CliRun AssertNoBug()
    {
        Assert.NotEqual(ExitCode.Bug, Code);
        Assert.DoesNotContain("   at ", Output + Error, StringComparison.Ordinal);
        return this;
    }
}
