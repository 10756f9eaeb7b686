using System.CommandLine;
using ProcScript.Cli.Commands;

namespace ProcScript.Cli.Manual;

/// <summary>The manual page, from the same commands that the arguments are read by.</summary>
internal static class ManualPage
{
    /// <summary>The page of the program.</summary>
    public static string Of(RootCommand root)
    {
        var page = new Troff()
            .Title("procscript", 1, $"procscript {ProductVersion.Text}", "User Commands")
            .Section("NAME").Text("procscript - check service procedures and turn them into work packs")
            .Section("SYNOPSIS").Lines(root.Subcommands.Select(verb => Usage("procscript", verb)));

        page.Section("DESCRIPTION").Text(
            """
            ProcScript is a small language for taking machines apart and putting them back together. A library of .proc files says how
            machines are built and what the jobs are. This program proves that the steps of each job can be done in their order, works
            out how everything goes back, and publishes cards to print and to tick off at the machine.
            """);
        page.Paragraph("It works offline, and sends nothing anywhere.");
        page.Paragraph("A work pack shows usual cautions. It does not replace the manufacturer's data, local codes or a licensed person's judgement.");
        page.Section("COMMANDS");
        foreach (var verb in root.Subcommands)
        {
            Describe(page, "procscript", verb);
        }

        page.Section("SIGNALS")
            .Item("SIGINT", "Ends the run and leaves no file half-written; the exit code is 130. A second one ends it at once.")
            .Item("SIGTERM", "The same, with the exit code 143.");
        page.Section("ENVIRONMENT")
            .Item("XDG_CACHE_HOME, LOCALAPPDATA, HOME", "The first of them that is set to a full path says where answers of check are remembered.")
            .Item("NO_COLOR", "If set, nothing is printed in colour unless --color always asks for it.")
            .Item("PROCSCRIPT_STACK", "If set, a fault of procscript is shown with its stack, for a report.");
        return page.ToString();
    }

    private static void Describe(Troff page, string above, Command command)
    {
        page.Subsection(Usage(above, command)).Text(command.Description ?? "");
        foreach (var argument in command.Arguments)
        {
            page.Item(NameOf(argument), argument.Description ?? "");
        }

        foreach (var option in command.Options)
        {
            page.Item(NamesOf(option), option.Description ?? "");
        }

        if (command is VerbCommand verb)
        {
            foreach (var note in verb.Notes)
            {
                page.Paragraph(note);
            }

            foreach (var (line, meaning) in verb.Examples)
            {
                page.Example(line, meaning);
            }
        }

        foreach (var inner in command.Subcommands)
        {
            Describe(page, $"{above} {command.Name}", inner);
        }
    }

    private static string Usage(string above, Command command)
    {
        var arguments = command.Arguments.Select(argument =>
            NameOf(argument) + (argument.Arity.MaximumNumberOfValues > 1 ? " ..." : "")).Select((name, index) =>
            command.Arguments[index].Arity.MinimumNumberOfValues == 0 ? $"[{name}]" : name);
        string[] parts =
        [
            above,
            command.Name,
            .. command.Subcommands.Count > 0 ? ["COMMAND"] : Array.Empty<string>(),
            .. command.Options.Where(option => option.Required).Select(option => $"{option.Name} {option.HelpName}"),
            .. command.Options.Any(option => !option.Required) ? ["[OPTION ...]"] : Array.Empty<string>(),
            .. arguments,
        ];
        return string.Join(' ', parts);
    }

    private static string NameOf(Argument argument) => argument.HelpName ?? argument.Name;

    private static string NamesOf(Option option) =>
        string.Join(", ", option.Aliases.Append(option.Name).OrderBy(name => name.Length).ThenBy(name => name, StringComparer.Ordinal))
        + (option.HelpName is { } value ? $" {value}" : "");
}
