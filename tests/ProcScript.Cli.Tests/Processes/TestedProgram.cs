using System.Diagnostics;

namespace ProcScript.Cli.Tests.Processes;

/// <summary>The program as a process of its own.</summary>
internal static class TestedProgram
{
    private const string Variable = "PROCSCRIPT";

    /// <summary>Whether the environment variable names another program than the one that the tests were built with.</summary>
    public static bool IsAnother => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 };

    /// <summary>How to start the program that the tests were built with, or the one that the environment variable names.</summary>
    public static ProcessStartInfo Start(params string[] arguments) => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } program
        ? new(program, arguments)
        : new("dotnet", [Path.Combine(AppContext.BaseDirectory, "procscript.dll"), .. arguments]);
}
