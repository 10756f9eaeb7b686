using ProcScript.Analysis.Prose;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>A word that leaves the reader to guess how much or how well.</summary>
public sealed class VagueWord : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5108", "vague-word", "A word that leaves open how much", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A text says `properly`, `adequately`, `sufficiently`, `as required`, `if necessary`, `etc.` or the like.",
        Why: "Whoever knows what is proper does not need the text, and whoever does not is not helped by it. Say the figure, the mark or the list.",
        Wrong: """
            clip pin "push pin" { engage "Seat the pin properly." }
            """,
        Right: """
            clip pin "push pin" { engage "Push the pin until its head is flush." }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from text in file.Texts
        where text.Kind != ProseKind.Label
        from vague in VagueWords.All(text.Value)
        select new Finding(Id, $"\"{vague.Value}\" leaves open how much, or what", text.Place(vague.Index, vague.Index + vague.Length), "says nothing that can be seen")
        {
            Help = "say the figure, the mark, or the things that are meant",
        };
}
