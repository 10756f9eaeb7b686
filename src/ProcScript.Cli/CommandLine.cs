using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using ProcScript.Cli.Commands;
using ProcScript.Cli.Jobs;
using ProcScript.Cli.Output;
using ProcScript.Jobs.Stores;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Rules.Wording;

namespace ProcScript.Cli;

/// <summary>The program from its arguments to its exit code.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command. Whatever goes wrong becomes a message and an exit code.</summary>
    public static async Task<ExitCode> RunAsync(IReadOnlyList<string> arguments, Surroundings around, CancellationToken stop)
    {
        try
        {
            var code = await InvokeAsync(arguments, around, stop);
            await around.Output.FlushAsync(CancellationToken.None);
            return code;
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            return ExitCode.Interrupted;
        }
        catch (Exception failure) when (failure is UsageException or JobStoreException)
        {
            return Fail(around, failure.Message);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // Reading and writing files say for themselves what failed: what is left is the output.
            return Fail(around, $"cannot write the output: {failure.Message}");
        }
        catch (Exception fault)
        {
            TryFlush(around.Output);
            BugReport.Write(Innermost(fault), arguments, around);
            return ExitCode.Bug;
        }
        finally
        {
            TryFlush(around.Error);
        }
    }

    private static async Task<ExitCode> InvokeAsync(IReadOnlyList<string> arguments, Surroundings around, CancellationToken stop)
    {
        var parsed = Root(around).Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        // Somebody who asks for help, or what could be typed next, is not done typing.
        if (parsed.Action?.ClearsParseErrors != true && Complaint(parsed) is { } complaint)
        {
            throw new UsageException(complaint);
        }

        InvocationConfiguration configuration = new()
        {
            Output = around.Output,
            Error = around.Error,
            EnableDefaultExceptionHandler = false,
            ProcessTerminationTimeout = null,
        };
        return (ExitCode)await parsed.InvokeAsync(configuration, stop);
    }

    /// <summary>What is wrong with a call; null where nothing is.</summary>
    internal static string? Complaint(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        if (UnknownOption(parsed) is { } option)
        {
            var near = new NearNames(OptionsOf(parsed.CommandResult)).Find(option);
            var meant = near.IsEmpty ? "" : $"; did you mean {WordList.Or(near.Select(name => $"'{name}'"))}?";
            return $"There is no option '{option}'{(near.IsEmpty ? "." : meant)}\nSee '{Path(parsed.CommandResult)} --help'.";
        }

        if (parsed.Errors.Count == 0)
        {
            return null;
        }

        var typed = parsed.UnmatchedTokens is [var first, ..] ? $"there is no command '{first}'" : "a command is missing";
        var what = command.Subcommands.Count > 0
            ? $"{typed}; there are: {string.Join(", ", command.Subcommands.Select(known => known.Name))}."
            : string.Join("\nprocscript: ", parsed.Errors.Select(error => error.Message));
        return $"{what}\nSee '{Path(parsed.CommandResult)} --help'.";
    }

    /// <summary>
    /// What is written as an option and is none. It would be taken for a file or an item, and those be said to be missing; what is really
    /// called so can be written <c>./-name</c>, or behind <c>--</c>.
    /// </summary>
    private static string? UnknownOption(ParseResult parsed)
    {
        var command = parsed.CommandResult;
        if (!command.Command.TreatUnmatchedTokensAsErrors)
        {
            return null;
        }

        HashSet<string> loose = [.. command.Tokens.Select(token => token.Value), .. parsed.UnmatchedTokens];
        return parsed.Tokens
            .TakeWhile(token => token.Type != TokenType.DoubleDash)
            .Where(token => token.Type == TokenType.Argument && loose.Contains(token.Value))
            .Select(token => token.Value)
            // A figure may be below zero, and a sentence begin with a dash.
            .FirstOrDefault(value => value is ['-', not (>= '0' and <= '9'), ..] && !value.Any(char.IsWhiteSpace));
    }

    private static IEnumerable<string> OptionsOf(CommandResult result) =>
        from at in CommandsFrom(result)
        from option in at.Command.Options
        where at == result || option.Recursive
        select option.Name;

    private static IEnumerable<CommandResult> CommandsFrom(CommandResult result) =>
        result.Parent is CommandResult parent ? CommandsFrom(parent).Append(result) : [result];

    private static string Path(CommandResult result) =>
        result.Parent is CommandResult parent ? $"{Path(parent)} {result.Command.Name}" : "procscript";

    /// <summary>The commands with all that they take.</summary>
    internal static RootCommand Root(Surroundings around)
    {
        RootCommand root = new("Checks service procedures and turns them into work packs.")
        {
            CheckCommand.Create(around),
            BaselineCommand.Create(around),
            SuppressionsCommand.Create(around),
            TestCommand.Create(around),
            AuditCommand.Create(around),
            BuildCommand.Create(around),
            CrewCommand.Create(around),
            JobCommand.Create(around),
            LearnCommand.Create(around),
            ModelCommand.Create(around),
            ReachCommand.Create(around),
            QuestionCommands.Back(around),
            QuestionCommands.Together(around),
            QuestionCommands.Why(around),
            QuestionCommands.Map(around),
            FormatCommand.Create(around),
            FixCommand.Create(around),
            DiffCommand.Create(around),
            ExplainCommand.Create(around),
            ConfigCommand.Create(around),
            TextsCommand.Create(around),
            NewCommand.Create(around),
            DraftCommand.Create(around),
            ServerCommand.Create(around),
            CompletionsCommand.Create(around),
            ManualCommand.Create(around),
        };
        foreach (var option in root.Options)
        {
            // What begins with a slash is a path, and nothing else.
            foreach (var path in option.Aliases.Where(alias => alias.StartsWith('/')).ToList())
            {
                option.Aliases.Remove(path);
            }

            option.Action = option switch
            {
                VersionOption => new VersionAction(),
                HelpOption { Action: HelpAction standard } => new HelpWithExamples(standard),
                _ => option.Action,
            };
        }

        return root;
    }

    private static ExitCode Fail(Surroundings around, string message)
    {
        TryFlush(around.Output);
        around.Error.WriteLine(LogCommands.DisarmLines($"procscript: {message}"));
        return ExitCode.Usage;
    }

    /// <summary>Work on several threads wraps what went wrong; the wrapping says nothing.</summary>
    private static Exception Innermost(Exception fault) =>
        fault is AggregateException { InnerExceptions: [var only, ..] } ? Innermost(only) : fault;

    private static void TryFlush(TextWriter writer)
    {
        try
        {
            writer.Flush();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // Nobody reads it any more; the exit code says the rest.
        }
    }
}
