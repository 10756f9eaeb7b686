using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Output;

/// <summary>How severities are called.</summary>
internal static class SeverityWords
{
    /// <summary>Such as <c>error</c>.</summary>
    public static string Of(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "hint",
    };
}
