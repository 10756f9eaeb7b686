using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Settings;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>An alert or a reason with too many sentences on end.</summary>
public sealed class LongParagraph : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5093", "long-paragraph", "A paragraph that is too long", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An alert or a reason has more than six sentences in one paragraph (`limits.paragraphSentences`). Items of a list are not counted as one paragraph's.",
        Why: "Nobody reads that far in front of an open machine, and the sentence that matters is among those not read. The limit is that of "
            + "simplified technical English (ASD-STE100, section 6).",
        Wrong: """
            machine press "Press" {
              energy mains "mains" {
                warning "Mains can kill. Pull the plug. Keep it in sight. Hang up your tag. Tell your mate. Wait a minute. Then start."
                isolate "Pull the plug."
                restore "Put the plug in."
              }
            }
            """,
        Right: """
            machine press "Press" {
              energy mains "mains" {
                warning "Mains can kill. Pull the plug and keep it in sight."
                isolate "Pull the plug."
                restore "Put the plug in."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from most in new[] { file.Settings.Get(SettingsTable.ParagraphSentences) }
        from text in file.Texts
        where text.Kind is ProseKind.Alert or ProseKind.Description
        from paragraph in text.Sentences.GroupBy(sentence => sentence.Paragraph)
        let sentences = paragraph.ToList()
        where sentences.Count > most
        select new Finding(
            Id,
            $"a paragraph of {sentences.Count} sentences: {most} are as many as are read",
            text.Place(sentences[0].Start, sentences[^1].End),
            "too much to read on end")
        {
            Help = "say what happens and how to avoid it; the steps belong into the steps",
        };
}
