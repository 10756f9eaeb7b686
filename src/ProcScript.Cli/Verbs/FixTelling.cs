using ProcScript.Analysis.Mending;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary>Says what <c>fix</c> came to: what was mended, what was tried in vain, and what is left.</summary>
/// <param name="report">What it came to.</param>
/// <param name="request">What was asked.</param>
/// <param name="paths">How files are named to the user.</param>
internal sealed class FixTelling(MendReport report, FixRequest request, ScreenPaths paths)
{
    /// <summary>Says all of it.</summary>
    public void Tell(Terminal terminal)
    {
        if (request.Diff)
        {
            foreach (var file in report.Files)
            {
                UnifiedDiff.Write(terminal, paths, file.Path, file.Before, file.After);
            }
        }

        foreach (var same in report.Mended.GroupBy(mend => (mend.Finding.Primary.Path, mend.Finding.Rule, mend.Fix.Title, mend.Fix.Grade)))
        {
            var times = same.Count() == 1 ? "" : $"{same.Count()} × ";
            terminal.WriteLine(new Piece(PrintableText.Of(
                $"{(request.Diff ? "would fix" : "fixed")} {paths.Of(same.Key.Path)}: {times}{same.Key.Title} ({Named(same.Key.Rule)}){Look(same.Key.Grade)}")));
        }

        TellTrouble(terminal);
        terminal.WriteLine(new Piece(Summary()));
    }

    /// <summary>Says only what did not go as asked.</summary>
    public void TellTrouble(Terminal terminal)
    {
        foreach (var refused in report.Refused)
        {
            terminal.WriteLine(new Piece(PrintableText.Of(
                $"not applied {paths.Of(refused.Finding.Primary.Path)}:{refused.Line}: {refused.Fix.Title} ({Named(refused.Finding.Rule)}): {refused.Because}"), Ink.Warning));
        }

        foreach (var fight in report.Fights)
        {
            var rules = string.Join(" and ", fight.Rules.Select(Named));
            terminal.WriteLine(new Piece(
                fight.Rules.Length == 1
                    ? $"not applied {paths.Of(fight.Path)}: the fixes of {rules} never come to an end there; fix these by hand"
                    : $"not applied {paths.Of(fight.Path)}: the fixes of {rules} undo each other there; apply those of one of them with --rule",
                Ink.Error));
        }
    }

    private static string Named(RuleInfo rule) => $"{rule.Code} {rule.Name}";

    private static string Look(FixGrade grade) => grade == FixGrade.NeedsLook ? ", needs a look" : "";

    private string Summary()
    {
        var mended = report.Mended.IsEmpty
            ? "nothing to fix"
            : $"{(request.Diff ? "would fix" : "fixed")} {Counted.Of(report.Mended.Length, "finding")} in {Counted.Of(report.Files.Length, "file")}";
        return report.Left.IsEmpty
            ? $"{mended}; no findings left{(report.After.Procedures.All(procedure => procedure.IsProven) ? "" : ", and not all is proven")}"
            : $"{mended}; {Counted.Of(report.Left.Length, "finding")} left: {string.Join(", ", Enum.GetValues<LeftBecause>().Select(Why).Where(why => why.Length > 0))}";
    }

    private string Why(LeftBecause because)
    {
        var count = report.Left.Count(left => left.Because == because);
        return (count, because) switch
        {
            (0, _) => "",
            (_, LeftBecause.NeedsLook) => $"{count} whose fix needs a look (--needs-look)",
            (_, LeftBecause.Choice) => $"{count} with several fixes to choose from",
            (_, LeftBecause.OtherRule) => $"{count} of other rules",
            (_, LeftBecause.Refused) => $"{count} whose fix is not applied",
            _ => $"{count} without a fix",
        };
    }
}
