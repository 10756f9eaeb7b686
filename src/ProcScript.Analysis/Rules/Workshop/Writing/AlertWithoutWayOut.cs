using ProcScript.Analysis.Prose;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>An alert says what can happen, and not how to keep out of it.</summary>
public sealed class AlertWithoutWayOut : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5106", "alert-without-way-out", "An alert that does not say how to avoid it", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A danger, a warning or a caution is one sentence that neither commands nor forbids anything. Longer alerts, and those with words such as "
            + "`only`, `never`, `away` or `before`, are left alone.",
        Why: "An alert names the hazard, what it does, and how to avoid it (ANSI Z535.6). Without the last the reader is frightened and no safer.",
        Wrong: """
            machine press "Press" {
              part guard "guard" { caution "The edge of the guard is sharp." }
            }
            """,
        Right: """
            machine press "Press" {
              part guard "guard" { caution "The edge of the guard cuts. Wear gloves." }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from text in file.Texts
        where text.Alert is { } alert && AlertMeaning.WordOf(alert).IsOfInjury()
        let sentences = text.Sentences
        where sentences.Length == 1 && InstructionReader.Command(sentences[0]) < 0 && !sentences[0].Words.Any(word => IsWayOut(word.Text))
        select new Finding(Id, $"a {text.Alert!.Keyword.Text} that does not say how to avoid it", text.Place(sentences[0]), "and what is one to do?")
        {
            Help = "add what to wear, where to stand, or what to leave alone",
        };

    private static bool IsWayOut(string word) => word.ToLowerInvariant() is "do" or "don't" or "never" or "only" or "must" or "keep" or "wear" or "avoid" or "stay"
        or "away" or "off" or "before" or "until" or "unless" or "let" or "use" or "stand" or "clear" or "beware" or "mind" or "watch" or "no" or "not" or "nobody" or "both"
        or "first" or "gloves" or "goggles" || EnglishVerbs.IsCommand(word);
}
