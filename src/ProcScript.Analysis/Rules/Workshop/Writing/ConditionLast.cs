using ProcScript.Analysis.Prose;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>The condition of an instruction comes after it.</summary>
public sealed class ConditionLast : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5103", "condition-last", "A condition after its command", Severity.Hint)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An instruction begins with its verb and says `if`, `when` or `unless` only after it.",
        Why: "Whoever reads the verb begins to do it. The condition comes first, with a comma: so simplified technical English has it (ASD-STE100, section 5). "
            + "`Check if …` and `Stop when …` are left alone: there the rest is what the verb is about.",
        Wrong: """
            clip pin "push pin" { engage "Renew the pin if its leg is bent." }
            """,
        Right: """
            clip pin "push pin" { engage "If its leg is bent, renew the pin." }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from text in file.Texts
        where text.Kind == ProseKind.Instruction
        from sentence in text.Sentences
        let condition = Condition(sentence)
        where condition > 0
        select At(text, sentence, condition);

    private static Finding At(ProseText text, Sentence sentence, int condition)
    {
        var words = sentence.Words;
        var (begin, end) = (words[condition].Start, words[^1].End);
        var command = sentence.Text[words[0].Start..words[condition - 1].End];
        var rest = sentence.Text[begin..end];
        return new Finding(
            Id,
            $"the condition comes after the command: \"{words[condition].Text}\" is read when \"{words[0].Text}\" is done",
            text.Place(begin, end),
            "comes too late")
        {
            Related = [new LabeledSpan(text.Place(words[0], words[0]), "the command")],
            Help = "begin with the condition, and a comma",
            Fixes =
            [
                new Fix(
                    "Put the condition first",
                    FixGrade.NeedsLook,
                    [
                        new TextEdit(
                            text.Place(words[0].Start, end),
                            TextQuotes.Escaped($"{char.ToUpperInvariant(rest[0])}{rest[1..]}, {char.ToLowerInvariant(command[0])}{command[1..]}")),
                    ]),
            ],
        };
    }

    /// <summary>The word that begins the condition; 0 where none follows the command.</summary>
    private static int Condition(Sentence sentence)
    {
        var words = sentence.Words;
        if (InstructionReader.Command(sentence) != 0 || TakesTheRest(words[0].Text) || sentence.ToString().AsSpan().IndexOfAny(':', ';') >= 0)
        {
            return 0;
        }

        for (var i = 2; i + 1 < words.Length; i++)
        {
            if (words[i].Text is "if" or "when" or "unless" && words[i - 1].Text.ToLowerInvariant() is not ("as" or "even" or "only" or "what" or "and" or "or" or "see" or "check"))
            {
                return i;
            }
        }

        return 0;
    }

    /// <summary>Verbs that are about what follows <c>if</c> or <c>when</c>.</summary>
    private static bool TakesTheRest(string verb) =>
        verb.ToLowerInvariant() is "check" or "look" or "ask" or "find" or "note" or "record" or "test" or "measure" or "mark" or "write" or "wait" or "stop" or "prove" or "watch" or "listen";
}
