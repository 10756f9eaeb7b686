using ProcScript.Cli.Output;

namespace ProcScript.Cli;

/// <summary>What the user sees of a fault of ours: a plea to report it, never a bare stack trace.</summary>
internal static class BugReport
{
    private const string StackVariable = "PROCSCRIPT_STACK";

    /// <summary>Writes the plea; the stack only for those who ask.</summary>
    public static void Write(Exception fault, IEnumerable<string> arguments, Surroundings around)
    {
        var error = around.Error;
        error.WriteLine(LogCommands.DisarmLines($"procscript: internal error: {fault.GetType().Name}: {fault.Message}"));
        error.WriteLine("This is a fault of procscript, not of your files. Please report it, with the files if you may share them:");
        error.WriteLine($"  version: {ProductVersion.Build}");
        error.WriteLine($"  command: procscript {string.Join(' ', arguments.Select(Quote))}");
        if (around.Variable(StackVariable) is { Length: > 0 })
        {
            error.WriteLine(fault);
        }
        else
        {
            error.WriteLine($"  details: run it again with {StackVariable}=1 in the environment");
        }
    }

    private static string Quote(string argument) => argument.Length == 0 || argument.Any(char.IsWhiteSpace) ? $"'{argument}'" : argument;
}
