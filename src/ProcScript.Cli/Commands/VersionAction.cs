using System.CommandLine;
using System.CommandLine.Invocation;

namespace ProcScript.Cli.Commands;

/// <summary>Prints the name and version of the program, and the commit it was built from.</summary>
internal sealed class VersionAction : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        parseResult.InvocationConfiguration.Output.WriteLine($"procscript {ProductVersion.Build}");
        return (int)ExitCode.Clean;
    }
}
