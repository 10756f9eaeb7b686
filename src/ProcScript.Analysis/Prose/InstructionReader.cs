namespace ProcScript.Analysis.Prose;

/// <summary>Where an English sentence goes on to another instruction.</summary>
/// <param name="First">The first of the words that join it on.</param>
/// <param name="Command">The verb of the next instruction.</param>
/// <param name="HasThen">Whether it says <c>then</c>.</param>
internal readonly record struct InstructionJoin(int First, int Command, bool HasThen);

/// <summary>Reads English instructions by their verbs: what a sentence commands, and where it commands a second thing.</summary>
internal static class InstructionReader
{
    /// <summary>The verb with which a sentence commands; -1 where it does not.</summary>
    public static int Command(Sentence sentence)
    {
        var first = sentence.Words[0].Text.ToLowerInvariant();
        if (EnglishVerbs.IsCommand(first))
        {
            return 0;
        }

        if (sentence.Words.Length > 1 && IsLead(first) && EnglishVerbs.IsCommand(sentence.Words[1].Text))
        {
            return 1;
        }

        // After a condition: `If it is loose, tighten it.`
        for (var i = 1; i < sentence.Words.Length && IsConditional(first); i++)
        {
            if (sentence.Before(i).Contains(',') && EnglishVerbs.IsCommand(sentence.Words[i].Text))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>Where a sentence that commands goes on to the next instruction.</summary>
    public static IEnumerable<InstructionJoin> Joins(Sentence sentence)
    {
        var command = Command(sentence);
        if (command < 0 || IsAtTheSameTime(sentence))
        {
            yield break;
        }

        for (var i = command + 2; i + 1 < sentence.Words.Length; i++)
        {
            var next = sentence.Words[i + 1].Text;
            if (sentence.Words[i].Is("then") && EnglishVerbs.IsCommand(next))
            {
                yield return new InstructionJoin(sentence.Words[i - 1].Is("and") ? i - 1 : i, i + 1, HasThen: true);
            }
            else if (sentence.Words[i].Is("and")
                && EnglishVerbs.IsCommand(next)
                && !EnglishVerbs.IsLasting(next)
                && (i + 2 == sentence.Words.Length || EnglishVerbs.MayFollow(sentence.Words[i + 2].Text)))
            {
                yield return new InstructionJoin(i, i + 1, HasThen: false);
            }
        }
    }

    private static bool IsLead(string word) => word is "then" or "now" or "next" or "first" or "slowly" or "carefully" or "gently" or "finally";

    private static bool IsConditional(string word) =>
        word is "if" or "when" or "while" or "once" or "after" or "before" or "with" or "where" or "unless" or "to" or "on" or "at" or "in" or "from";

    private static bool IsAtTheSameTime(Sentence sentence) =>
        sentence.Words.Any(word => word.Is("while") || word.Is("simultaneously") || word.Is("together"))
        || sentence.ToString().Contains("same time", StringComparison.OrdinalIgnoreCase);
}
