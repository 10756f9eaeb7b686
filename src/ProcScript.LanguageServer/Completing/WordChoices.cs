using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.Model.Binding.Properties;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The words of the language that fit: all that the grammar takes, but for what makes no sense of the thing at hand.</summary>
/// <param name="here">What is known around the place.</param>
/// <param name="place">The place as the grammar sees it.</param>
/// <param name="names">The names that fit.</param>
/// <param name="client">What the client can do.</param>
internal sealed class WordChoices(Vicinity here, TypingPlace place, NameChoices names, ClientProfile client)
{
    private static readonly ImmutableArray<string> Joining = ["before", "after", "expect", "with", "needs", "strip", "refit"];

    /// <summary>The ways to begin a sentence of the block, the usual ones first.</summary>
    public IEnumerable<CompletionItem> Beginnings()
    {
        var begun = place.Grammar.Next.Where(next => next is { Begins: true, Sort: NextWordSort.Keyword }).ToList();
        if (begun.Count == 0)
        {
            return [];
        }

        var block = place.Block;
        var taken = begun.Select(next => First(next.Word)).ToHashSet(StringComparer.Ordinal);
        var sentences = Sentences.For(block).Where(sentence => taken.Contains(First(sentence.Label))).ToList();
        var known = sentences.Select(sentence => First(sentence.Label)).ToHashSet(StringComparer.Ordinal);

        // What the grammar has, and nobody has written a way to begin for, here or elsewhere.
        var others = begun
            .Where(next => !known.Contains(First(next.Word)) && !Sentences.IsKnown(First(next.Word)) && !PropertyWords.IsProperty(First(next.Word)) && Row(First(next.Word)) is null)
            .Select(next => ChoiceList.Word(next.Word, ""));
        var holes = new HoleChoices(here, place, client);
        var habits = new Habits(here.Asked, block);
        var before = block.Length == 0 ? JobsInText.DeclarationAt(here.Asked, here.Offset - 1) is CatalogSyntax { Keyword.Text: var last } ? last : "" : place.Grammar.Begun is [.., var begin] ? begin : "";
        return sentences
            .Where(sentence => !(block is not ("stage" or "work" or "refit" or "test") && PropertyWords.StandsOnce(sentence.Label) && place.Grammar.Begun.Contains(First(sentence.Label))))
            .OrderBy(sentence => IsOneWay(sentence.Label))
            .ThenByDescending(sentence => sentence.Label == before && block.Length == 0)
            .ThenByDescending(sentence => sentence.Label == "needs" && place.Grammar.FollowsAside(here.Offset))
            .ThenByDescending(sentence => Prospect(block, sentence.Label))
            .ThenByDescending(sentence => habits.Count(before, First(sentence.Label)))
            .ThenByDescending(sentence => habits.Count(First(sentence.Label)))
            .Select(sentence => sentence.Item(client.TakesSnippets ? holes.Fill : null))
            .Concat(others);
    }

    /// <summary>The words that go on with the sentence, those that are mostly meant first.</summary>
    public IEnumerable<CompletionItem> Within(IEnumerable<NextWord> next) => next
        .OrderByDescending(one => NeedOf(one) is not null)
        .ThenBy(one => !IsVerb(one) && Joining.IndexOf(First(one.Word)) is >= 0 and var at ? at : Joining.Length)
        .ThenByDescending(one => IsMeant(one))
        .SelectMany(Within);

    // Verbs of a goal are told by the title, those of a rule by what the strip has done.
    private bool IsMeant(NextWord next) => IsVerb(next)
        && (next.Frames.Any(frame => frame.Rule == "goal") ? names.Outlook.IsSpokenOf(next.Word) : names.Outlook.IsForSomething(next.Word));

    /// <summary>The item for a word that goes on with the sentence; none where it makes no sense there.</summary>
    private IEnumerable<CompletionItem> Within(NextWord next)
    {
        var rule = next.Frames[0].Rule;
        if (NeedOf(next) is { } need)
        {
            return names.States(need) is not { } states ? [ChoiceList.Word(next.Word, "")]
                : states.Any(state => state.Label == next.Word) ? states
                : [];
        }

        if (IsVerb(next))
        {
            return Verb(next);
        }

        return IsSense(rule, next) ? [ChoiceList.Word(next.Word, "")] : [];
    }

    /// <summary>The condition that a word would say the state of; null where it says none.</summary>
    private static WritingFrame? NeedOf(NextWord next) =>
        next.Frames[0].Rule == "needState" || next.Word == "at" ? next.Frames.FirstOrDefault(frame => frame is { Rule: "need", IsBegun: true }) : null;

    private bool IsSense(string rule, NextWord next) => (rule, First(next.Word)) switch
    {
        ("deed", "to") => VerbAt(next) == "set",
        ("deed", "of") => true,
        ("amount", "rest") => Row(VerbAt(next)) is { } row && (row.Targets & ActionTargets.Joint) != 0,
        ("background", _) => VerbAt(next) is not { } verb || Row(verb) is { MayRunInBackground: true },
        ("whereNeeded", _) => place.Block is "stage" or "procedure",
        ("orderRule" or "order", "to") => next.Frames[0].Words.Contains("set"),
        ("whileClause", "while") => next.Frames.Any(frame => frame is { Rule: "orderRule", Words: ["restore", ..] }),
        ("test", "is") => here.Values.IsVariable(next.Frames[0].Words[0]),
        _ => true,
    };

    /// <summary>A verb within a sentence: of a goal, or of a rule of the refit.</summary>
    private static IEnumerable<CompletionItem> Verb(NextWord next)
    {
        if (Row(next.Word) is not { IsInserted: false } row || row.Targets == ActionTargets.None)
        {
            return [];
        }

        var isGoal = next.Frames.Any(frame => frame is { Rule: "goal", IsBegun: true });
        return (row.Phase & (isGoal ? ActionPhase.Strip | ActionPhase.Work : ActionPhase.Refit)) != 0 ? [ChoiceList.Word(next.Word, row.Phrase("…"))] : [];
    }

    /// <summary>How well a verb suits the moment: of the strip, what has just come within reach; of the refit, what there is to undo.</summary>
    private int Prospect(string block, string verb)
    {
        if (Row(verb) is not { } row || block is not ("stage" or "refit"))
        {
            return 0;
        }

        var outlook = names.OutlookHere;
        return block == "refit" ? (outlook.IsForSomething(verb) ? 1 : 0)
            : !row.Phase.HasFlag(ActionPhase.Strip) || outlook.Of(verb).Possible.IsEmpty ? 0 : outlook.IsFresh(verb) ? 2 : 1;
    }

    private static bool IsVerb(NextWord next) => next.Frames.Any(frame => frame.Rule is "actionVerb" or "snugVerb" or "verb");

    private static string? VerbAt(NextWord next) => next.Frames.FirstOrDefault(frame => frame.Rule is "action" or "stripStep")?.Words.FirstOrDefault();

    private static ActionRow? Row(string? verb) => ActionTable.Rows.FirstOrDefault(row => row.Word == verb);

    /// <summary>Whether it is a form for one way only of what stands among the others too.</summary>
    private static bool IsOneWay(string label) => label.StartsWith("strip ", StringComparison.Ordinal) || label.StartsWith("refit ", StringComparison.Ordinal);

    private static string First(string words) => words.IndexOf(' ', StringComparison.Ordinal) is > 0 and var blank ? words[..blank] : words;
}
