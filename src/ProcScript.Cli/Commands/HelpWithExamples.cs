using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace ProcScript.Cli.Commands;

/// <summary>The standard help, and below it how the command is used.</summary>
/// <param name="standard">The standard help.</param>
internal sealed class HelpWithExamples(HelpAction standard) : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        standard.MaxWidth = 100;
        standard.Invoke(parseResult);
        var output = parseResult.InvocationConfiguration.Output;
        if (parseResult.CommandResult.Command is not VerbCommand verb)
        {
            output.WriteLine("'procscript COMMAND --help' says more of a command and gives examples.");
        }
        else
        {
            foreach (var paragraph in verb.Notes)
            {
                output.WriteLine(paragraph);
                output.WriteLine();
            }

            output.WriteLine("Examples:");
            foreach (var (line, meaning) in verb.Examples)
            {
                output.WriteLine($"  {line}");
                output.WriteLine($"      {meaning}");
            }
        }

        return (int)ExitCode.Clean;
    }
}
