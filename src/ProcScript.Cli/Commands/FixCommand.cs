using System.Collections.Frozen;
using System.CommandLine;
using ProcScript.Analysis;
using ProcScript.Analysis.Mending;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Commands;

/// <summary>The arguments of <c>fix</c>.</summary>
internal static class FixCommand
{
    /// <summary>The command.</summary>
    public static Command Create(Surroundings around)
    {
        InputArguments input = new();
        WordingOption wording = new();
        ColourOption colour = new();
        Option<bool> diff = new("--diff") { Description = "Write nothing; show what would change." };
        Option<bool> needsLook = new("--needs-look") { Description = "Apply the fixes that need a look too; look at them with --diff first." };
        Option<string[]> rule = new("--rule") { Description = "Fix the findings of this rule only; may be given several times.", HelpName = "RULE" };
        rule.CompletionSources.Add(_ => RuleCatalog.All.Select(known => known.Info.Name));
        rule.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string[]>().FirstOrDefault(typed => RuleCatalog.Find(typed) is null) is { } unknown)
            {
                result.AddError($"there is no rule '{unknown}'; 'procscript explain' lists all.");
            }
        });

        VerbCommand command = new("fix", "Fixes what it can: applies the fixes that 'check' offers.")
        {
            Notes =
            [
                """
                A fix that is safe is applied once a second check has shown that its finding goes, that no error comes and
                that every work pack that was proven says what it said. One that needs a look is applied with --needs-look,
                by the same check but for the packs. Of several fixes to choose from none is applied.
                """,
                """
                It goes on until nothing more is to be mended. Fixes that undo each other are named, and nothing is written.
                A file that was laid out before is laid out after; others are left as their authors laid them out.
                Only PATHs are changed, not the files that they use. The text of - goes to the output.
                """,
                "Exit codes: 0 no errors left, 1 errors left, or with --diff something to change, 2 wrong usage, unreadable or unwritable file, 3 a fault of procscript.",
            ],
            Examples =
            [
                ("procscript fix procedures --diff", "Show what would be fixed in a library."),
                ("procscript fix procedures", "Fix it."),
                ("procscript fix procedures --rule alerts-out-of-order", "Fix the findings of one rule."),
                ("procscript fix procedures --needs-look --diff", "Show the fixes that need a look too."),
            ],
        };
        input.AddTo(command);
        foreach (var option in (IEnumerable<Option>)[diff, rule, needsLook])
        {
            command.Add(option);
        }

        wording.AddTo(command);
        colour.AddTo(command);
        command.SetAction(async (parsed, stop) => (int)await FixVerb.RunAsync(
            new FixRequest(
                input.Read(parsed),
                wording.Read(parsed),
                new MendRequest { Rules = Codes(parsed.GetValue(rule)), NeedsLook = parsed.GetValue(needsLook) },
                parsed.GetValue(diff),
                colour.Read(parsed)),
            around,
            stop));
        return command;
    }

    private static FrozenSet<string>? Codes(string[]? typed) =>
        typed is null or [] ? null : typed.Select(one => RuleCatalog.Find(one)!.Info.Code).ToFrozenSet(StringComparer.Ordinal);
}
