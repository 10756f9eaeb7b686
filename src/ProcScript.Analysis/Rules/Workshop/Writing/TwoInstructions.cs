using ProcScript.Analysis.Prose;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>A sentence that has more than one thing done.</summary>
public sealed class TwoInstructions : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5101", "two-instructions", "More than one instruction in a sentence", Severity.Hint)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A sentence that says what to do goes on with `then` or `and` to a second thing to do. What is done at the same time may share a "
            + "sentence (`while`, `at the same time`), and so may what is kept up meanwhile (`and hold it`, `and keep it in sight`).",
        Why: "One thing is done, the next is read. The second half of a sentence is what people forget when the first took a minute. One "
            + "instruction a sentence is the rule of simplified technical English (ASD-STE100, section 5). The rule knows English verbs from a list, not grammar.",
        Wrong: """
            clip lock "quarter-turn lock" { release "Turn it to the left and pull the panel away." }
            """,
        Right: """
            clip lock "quarter-turn lock" { release "Turn it to the left. Pull the panel away." }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from text in file.Texts
        where text.Kind == ProseKind.Instruction
        from sentence in text.Sentences
        let joins = InstructionReader.Joins(sentence).ToList()
        where joins.Count > 0
        select At(text, sentence, joins);

    private static Finding At(ProseText text, Sentence sentence, List<InstructionJoin> joins)
    {
        var second = sentence.Words[joins[0].Command];
        return new Finding(
            Id,
            $"a sentence with {(joins.Count == 1 ? "two" : "several")} instructions: \"{second.Text}\" is one of its own",
            text.Place(sentence.Words[joins[0].First], second),
            "the next instruction begins here")
        {
            Help = "give each instruction a sentence",
            Fixes =
            [
                new Fix(
                    "Make two sentences of it",
                    FixGrade.NeedsLook,
                    [.. joins.Select(join => new TextEdit(text.Place(sentence.Words[join.First - 1].End, sentence.Words[join.Command].End), Opening(sentence, join)))]),
            ],
        };
    }

    /// <summary>The full stop and the opening of the new sentence.</summary>
    private static string Opening(Sentence sentence, InstructionJoin join)
    {
        var command = sentence.Words[join.Command].Text;
        return join.HasThen ? $". Then {command}" : $". {char.ToUpperInvariant(command[0])}{command[1..]}";
    }
}
