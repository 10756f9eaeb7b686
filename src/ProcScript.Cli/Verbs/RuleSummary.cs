using System.Globalization;
using ProcScript.Cli.Output;
using ProcScript.Cli.Reports;

namespace ProcScript.Cli.Verbs;

/// <summary>The rules that have findings, a line each, where the findings are too many to keep in mind.</summary>
internal static class RuleSummary
{
    private const int Many = 20;

    /// <summary>Prints it where there are many findings of several rules.</summary>
    public static void Print(CheckOutcome outcome, Terminal terminal)
    {
        var rules = outcome.Counts.ByRule;
        if (outcome.Counts.Findings <= Many || rules.Length < 2)
        {
            return;
        }

        var width = rules[0].Count.ToString(CultureInfo.InvariantCulture).Length;
        foreach (var rule in rules)
        {
            terminal.WriteLine(new Piece(rule.Count.ToString(CultureInfo.InvariantCulture).PadLeft(width) + "  "), new Piece($"{rule.Rule} {rule.Name}", Ink.Strong));
        }

        terminal.WriteLine();
    }
}
