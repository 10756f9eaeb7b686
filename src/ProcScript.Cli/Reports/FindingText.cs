using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Reports;

/// <summary>A finding in a few plain lines, for what shows no more.</summary>
internal static class FindingText
{
    /// <summary>The headline, what is to be seen at the place, and the cure, a line each.</summary>
    public static string Of(Finding finding)
    {
        var text = finding.Message;
        text += finding.Label.Length > 0 ? "\n" + finding.Label : "";
        return (text + (finding.Help.Length > 0 ? "\nHelp: " + finding.Help : "")).ReplaceLineEndings("\n");
    }
}
