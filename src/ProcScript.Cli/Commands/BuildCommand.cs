using System.CommandLine;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Verbs;
using ProcScript.Cli.Watching;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>build</c>.</summary>
internal static class BuildCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new();
        WordingOption wording = new();
        LanguageOption language = new();
        ColourOption colour = new();
        CrewOptions crew = new(usual: null);
        Option<string> output = new("--output", "-o") { Description = "The folder to write to.", HelpName = "DIR", Required = true };
        Option<string[]> format = new("--format")
        {
            Description = "What to write: cards.html, cards.md, plan.json.",
            HelpName = "html,md,json",
            DefaultValueFactory = _ => ["html,md,json"],
        };
        format.Validators.Add(result =>
        {
            if (Split(result.GetValueOrDefault<string[]>()).Except(Names).FirstOrDefault() is { } unknown)
            {
                result.AddError($"'{unknown}' is no format: choose among {string.Join(", ", Names)}.");
            }
        });
        Option<string[]> with = new("--with") { Description = "An option that the machine has; may be given several times.", HelpName = "OPTION" };
        Option<string?> procedure = new("--procedure") { Description = "Build this procedure only.", HelpName = "NAME" };
        Option<string?> templates = new("--templates") { Description = "A folder of templates that replace the standard ones.", HelpName = "DIR" };

        Option<string?> layout = new("--layout")
        {
            Description = "Whether cards share sheets or each is printed on sheets of its own; the settings say it otherwise.",
            HelpName = "flow|card",
        };
        layout.AcceptOnlyFromAmong("flow", "card");
        Option<string?> labels = new("--labels")
        {
            Description = "What bag labels are printed on: plain paper, or labels of so many mm; the settings say it otherwise.",
            HelpName = string.Join('|', SettingsTable.Labels.Options),
        };
        labels.AcceptOnlyFromAmong([.. SettingsTable.Labels.Options]);
        Option<bool> watch = new("--watch") { Description = "Build again whenever a file changes and show the packs in a browser, until Ctrl-C." };
        Option<int?> port = new("--port") { Description = "With --watch, the port of this machine to show them at.", HelpName = "PORT" };
        port.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int?>() is < 1 or > 65535)
            {
                result.AddError("a port is a number from 1 to 65535.");
            }
        });

        VerbCommand command = new("build", "Checks, and writes a work pack for each procedure that is proven.")
        {
            Notes =
            [
                InputArguments.Note,
                """
                Writes DIR/<procedure>/cards.html, cards.md and plan.json, and labels.html for sheets of labels; options are added to the folder's name, as in
                seat_out+air_seat. Where procedures of two machines share a name, the machine is put before it.
                Nothing is written for a procedure that is not proven.
                """,
                """
                With --watch the packs are shown at an address of this machine, and a page that is looked at is loaded again
                when it was built anew. The files that are written are the same as without. Ctrl-C ends it with 0.
                """,
                "Exit codes: 0 clean, 1 errors, 2 wrong usage, unreadable input or unwritable output, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript build procedures -o packs", "Build every procedure of a library, each machine without options."),
                ("procscript build procedures -o packs --with air_seat", "The same for machines with an air-suspended seat."),
                ("procscript build procedures -o packs --procedure seat_out --format html", "Build the cards of one procedure."),
                ("procscript build procedures -o packs --language de", "Write the packs in German, but for the authors' own words."),
                ("procscript build procedures -o packs --watch", "Build at every save, and see the cards in a browser."),
                ("procscript build procedures -o packs --people 2", "Say at each step which of two people does it, with a timeline."),
                ("procscript build procedures -o packs --layout card", "Print each card on sheets of its own."),
                ("procscript build procedures -o packs --labels 70x36", "Put the bag labels on sheets of 24 labels, in labels.html beside the cards."),
                ("procscript build procedures -o packs --templates our-cards", "Use the shop's own templates."),
            ],
        };
        input.AddTo(command);
        foreach (var option in (IEnumerable<Option>)[output, format, with, procedure, templates, layout, labels, watch, port])
        {
            command.Add(option);
        }

        LibraryNames names = new(input.Read, around);
        names.Complete(procedure, LibraryNames.Procedures);
        crew.AddTo(command, names);
        language.AddTo(command);
        wording.AddTo(command);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) =>
        {
            BuildRequest request = new(
                input.Read(parsed),
                wording.Read(parsed) with { Language = language.Read(parsed), Layout = Layout(parsed.GetValue(layout)), Labels = Labels(parsed.GetValue(labels)) },
                parsed.GetRequiredValue(output),
                [.. PackFormat.All.Where(known => Split(parsed.GetValue(format)).Contains(known.Name))],
                [.. (parsed.GetValue(with) ?? []).Distinct(StringComparer.Ordinal)],
                parsed.GetValue(procedure),
                parsed.GetValue(templates),
                colour.Read(parsed))
            {
                Crew = crew.Size(parsed),
                Exact = crew.IsExact(parsed),
                Seconds = crew.Seconds(parsed),
            };
            return (int)(parsed.GetValue(watch)
                ? await BuildWatch.RunAsync(request, parsed.GetValue(port), around, stop)
                : await BuildVerb.RunAsync(request, around, stop));
        });
        return command;
    }

    private static CardLayout? Layout(string? typed) => typed switch
    {
        "card" => CardLayout.Card,
        "flow" => CardLayout.Flow,
        _ => null,
    };

    private static LabelStock? Labels(string? typed) =>
        typed is null ? null : SettingsTable.Labels.Words.First(word => word.Word == typed).Value;

    private static IEnumerable<string> Names => PackFormat.All.Select(format => format.Name);

    private static IEnumerable<string> Split(string[]? typed) =>
        (typed ?? []).SelectMany(formats => formats.Split(',', StringSplitOptions.TrimEntries));
}
