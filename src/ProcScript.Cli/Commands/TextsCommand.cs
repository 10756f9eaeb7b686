using System.CommandLine;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>texts</c>.</summary>
internal static class TextsCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        VerbCommand command = new("texts", "Hands the authors' texts to translators, and takes the translations in.")
        {
            Examples =
            [
                ("procscript texts export procedures --language de -o to-do.xlf", "Write out every text, with the German translation where it still holds."),
                ("procscript texts import procedures --language de --from done.xlf", "Take translations in; they are kept beside the sources."),
            ],
        };
        command.Add(Export(around));
        command.Add(Import(around));
        return command;
    }

    private static VerbCommand Export(Surroundings around)
    {
        InputArguments input = new();
        LanguageOption language = new(isRequired: true);
        Option<string> output = new("--output", "-o") { Description = "The file to write.", HelpName = "FILE", Required = true };
        VerbCommand command = new("export", "Writes the texts out as XLIFF 2.1, with the translations that still hold.")
        {
            Notes =
            [
                """
                A text is known by where it stands: its file, the names of what it is in, its property, and the count of those alike.
                """,
                "Exit codes: 0 written, 2 wrong usage, unreadable input or unwritable file, 3 a fault of procscript.",
            ],
            Examples = [("procscript texts export procedures --language de -o to-do.xlf", "Write out what there is to translate into German.")],
        };
        input.AddTo(command);
        language.AddTo(command);
        command.Add(output);
        command.SetAction((parsed, stop) => Task.FromResult((int)TextsVerb.Export(
            new TextsRequest(input.Read(parsed), language.Read(parsed)!.Value, parsed.GetRequiredValue(output)), around, stop)));
        return command;
    }

    private static VerbCommand Import(Surroundings around)
    {
        InputArguments input = new();
        LanguageOption language = new(isRequired: true);
        Option<string> from = new("--from") { Description = "The file that the translator gave back.", HelpName = "FILE", Required = true };
        VerbCommand command = new("import", "Takes translations in, those of texts that are still as they were translated.")
        {
            Notes =
            [
                """
                They are kept in the library, in texts/de.xlf or where the setting texts.folder says. A translation of a text that has
                changed meanwhile is left out and told, and so is one of a text that is gone.
                """,
                "Exit codes: 0 all taken in, 1 some left out, 2 wrong usage, unreadable input or unwritable file, 3 a fault of procscript.",
            ],
            Examples = [("procscript texts import procedures --language de --from done.xlf", "Take German translations in.")],
        };
        input.AddTo(command);
        language.AddTo(command);
        command.Add(from);
        command.SetAction((parsed, stop) => Task.FromResult((int)TextsVerb.Import(
            new TextsRequest(input.Read(parsed), language.Read(parsed)!.Value, parsed.GetRequiredValue(from)), around, stop)));
        return command;
    }
}
