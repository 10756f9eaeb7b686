using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Settings;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>A sentence that is too long to be read with a spanner in the hand.</summary>
public sealed class LongSentence : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5092", "long-sentence", "A sentence that is too long", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A sentence that says what to do or to check has more than 20 words, or one that warns or explains more than 25 (`limits.instructionWords`, `limits.descriptionWords`). A word with "
            + "hyphens, an abbreviation, and a number with its unit count as one word each, and so does a variable. An item of a list is a sentence.",
        Why: "A card is read in bits, between two grips. Past 20 words the beginning is forgotten before the end is read, most of all by "
            + "people who read in a second language. The limits are those of simplified technical English (ASD-STE100, sections 5 and 6).",
        Wrong: """
            clip pin "push pin" {
              release "Put the flat end of the plastic trim lever under the head of the pin that sits in the corner next to the lamp."
            }
            """,
        Right: """
            clip pin "push pin" {
              release "Put the flat end of the trim lever under the head. The pin next to the lamp is meant."
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from text in file.Texts
        let most = Most(text.Kind, file.Settings)
        where text.Value.Length > most
        from sentence in text.Sentences
        where sentence.Words.Length > most
        select new Finding(
            Id,
            $"a sentence of {sentence.Words.Length} words: {Sort(text.Kind)} should have no more than {most}",
            text.Place(sentence),
            "too long to keep in mind")
        {
            Help = "make two sentences of it, or leave out what the reader knows",
        };

    private static int Most(ProseKind kind, PathSettings settings) => kind switch
    {
        ProseKind.Instruction or ProseKind.Check => settings.Get(SettingsTable.InstructionWords),
        ProseKind.Label => int.MaxValue,
        _ => settings.Get(SettingsTable.DescriptionWords),
    };

    private static string Sort(ProseKind kind) => kind switch
    {
        ProseKind.Instruction => "one that says what to do",
        ProseKind.Check => "one that says what to check",
        ProseKind.Alert => "one that warns",
        _ => "one that explains",
    };
}
