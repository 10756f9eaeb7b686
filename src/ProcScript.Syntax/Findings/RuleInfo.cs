namespace ProcScript.Syntax.Findings;

/// <summary>What is fixed about a rule: its code and name never change and are never used again.</summary>
/// <param name="Code">PRC and four digits.</param>
/// <param name="Name">Words with hyphens that say what one would allow.</param>
/// <param name="Title">One line without the particulars.</param>
/// <param name="DefaultSeverity">The severity unless the driver sets another.</param>
public sealed record RuleInfo(string Code, string Name, string Title, Severity DefaultSeverity)
{
    /// <summary>The version that brought the rule.</summary>
    public string Since { get; init; } = "0.1";

    /// <summary>Whether findings of this rule carry edits.</summary>
    public FixAvailability Fix { get; init; } = FixAvailability.Never;
}
