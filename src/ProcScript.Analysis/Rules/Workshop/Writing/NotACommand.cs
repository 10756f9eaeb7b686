using ProcScript.Analysis.Prose;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>An instruction that does not say: do it.</summary>
public sealed class NotACommand : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5102", "not-a-command", "An instruction that does not command", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A text that says what to do begins with `You should`, `The technician must` or `It is necessary to`, says that something `is to be "
            + "removed` or `must be tightened`, or begins with an `-ing` form.",
        Why: "`Remove the cover` is shorter, and leaves open neither who does it nor whether. The command is the form of simplified technical "
            + "English for procedures (ASD-STE100, section 5). What a check finds, and what an alert tells of, may be said in any form.",
        Wrong: """
            clip pin "push pin" { release "The head is to be lifted first." }
            """,
        Right: """
            clip pin "push pin" { release "Lift the head first." }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from text in file.Texts
        where text.Kind == ProseKind.Instruction
        from sentence in text.Sentences
        let roundabout = Roundabout(sentence)
        where roundabout is not null
        let place = text.Place(sentence.Words[roundabout.Value.First], sentence.Words[roundabout.Value.Last])
        select new Finding(
            Id,
            $"an instruction that does not command: \"{sentence.Text[sentence.Words[roundabout.Value.First].Start..sentence.Words[roundabout.Value.Last].End]}\"",
            place,
            "says it in a roundabout way")
        {
            Help = "begin with the verb: say `Remove the cover`",
        };

    /// <summary>The words that stand for a command.</summary>
    private static (int First, int Last)? Roundabout(Sentence sentence)
    {
        var words = sentence.Words;
        if (words.Length > 2 && words[0].Text.ToLowerInvariant() is "you" or "one" or "we" && IsDuty(words[1].Text))
        {
            return (0, 1);
        }

        if (words.Length > 3 && (words[0].Is("the") || words[0].Is("a") || words[0].Is("an")) && IsWorker(words[1].Text) && IsDuty(words[2].Text))
        {
            return (0, 2);
        }

        if (sentence.Has(0, "it", "is") && words.Length > 3 && words[2].Text.ToLowerInvariant() is "necessary" or "important" or "recommended" or "required")
        {
            return (0, 2);
        }

        for (var i = 1; i + 2 < words.Length; i++)
        {
            var (verb, to) = (words[i].Text.ToLowerInvariant(), words[i + 1]);
            if (verb is "should" or "must" or "shall" && to.Is("be") && EnglishVerbs.IsParticiple(words[i + 2].Text))
            {
                return (i, i + 2);
            }

            if (verb is "is" or "are" or "has" or "have" or "needs" or "need" && i + 3 < words.Length && to.Is("to") && words[i + 2].Is("be") && EnglishVerbs.IsParticiple(words[i + 3].Text))
            {
                return (i, i + 3);
            }
        }

        return EnglishVerbs.IsGerund(words[0].Text)
            && words.Length > 1
            && EnglishVerbs.MayFollow(words[1].Text)
            && !words.Any(word => EnglishVerbs.IsFinite(word.Text))
                ? (0, 0)
                : null;
    }

    private static bool IsDuty(string word) =>
        word.ToLowerInvariant() is "should" or "must" or "shall" or "need" or "needs" or "have" or "has" or "can" or "may" or "will";

    private static bool IsWorker(string word) =>
        word.ToLowerInvariant() is "technician" or "operator" or "mechanic" or "user" or "worker" or "fitter" or "engineer" or "electrician";
}
