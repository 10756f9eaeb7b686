using ProcScript.Analysis;
using ProcScript.Cli.Output;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary><c>explain</c>: prints the page of a rule, or the list of all.</summary>
internal static class ExplainVerb
{
    /// <summary>Explains one rule, or lists all where none is named.</summary>
    public static ExitCode Run(string? codeOrName, ColourChoice colour, Surroundings around)
    {
        var terminal = Terminal.For(around, colour);
        if (codeOrName is null)
        {
            List(terminal);
        }
        else
        {
            Print(RuleCatalog.Find(codeOrName) ?? throw new UsageException($"there is no rule '{codeOrName}'; 'procscript explain' lists all."), terminal);
        }

        return ExitCode.Clean;
    }

    private static void List(Terminal terminal)
    {
        var widest = RuleCatalog.All.Max(rule => rule.Info.Name.Length);
        foreach (var rule in RuleCatalog.All)
        {
            var info = rule.Info;
            terminal.WriteLine(
                new Piece(info.Code + "  ", Ink.Strong),
                new Piece($"{info.Name.PadRight(widest)}  {SeverityWords.Of(info.DefaultSeverity),-7}  "),
                new Piece(info.Title));
        }
    }

    private static void Print(Rule rule, Terminal terminal)
    {
        var (info, page) = (rule.Info, rule.Page);
        terminal.WriteLine(new Piece($"{info.Code} {info.Name}: {info.Title}", Ink.Strong));
        terminal.WriteLine(new Piece($"{SeverityWords.Of(info.DefaultSeverity)}, since {info.Since}, {Fix(info.Fix)}"));
        Paragraph("What", page.What);
        Paragraph("Why", page.Why);
        Paragraph("Wrong", page.Wrong);
        Paragraph("Right", page.Right);

        void Paragraph(string title, string text)
        {
            terminal.WriteLine();
            terminal.WriteLine(new Piece(title, Ink.Strong));
            foreach (var line in text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n'))
            {
                terminal.WriteLine(new Piece("  " + PrintableText.Of(line)));
            }
        }
    }

    private static string Fix(FixAvailability fix) => fix switch
    {
        FixAvailability.Always => "offers an edit",
        FixAvailability.Sometimes => "sometimes offers an edit",
        _ => "offers no edit",
    };
}
