using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Tokens;

namespace ProcScript.LanguageServer.Features;

/// <summary>Where somebody types: told by the words before, since the sentence is not there yet and its tree is a guess.</summary>
/// <param name="Block">
/// The word that opened the block: <c>stage</c>, <c>work</c>, <c>part</c> …, or one of the names below; empty outside of all.
/// </param>
/// <param name="Words">The words of the sentence so far, without the one that is being typed.</param>
/// <param name="Start">Where the sentence begins.</param>
/// <param name="IsInText">Whether a text or a comment is being typed.</param>
internal sealed record TypingPlace(string Block, ImmutableArray<string> Words, int Start, bool IsInText)
{
    /// <summary>The block of an action on an item.</summary>
    public const string Action = "(action)";

    /// <summary>The block of a measurement, task, check, record or pause.</summary>
    public const string TextAction = "(text)";

    /// <summary>The block in an action that says what it is like in the refit.</summary>
    public const string ActionInRefit = "(refit)";

    /// <summary>The block of a test under power.</summary>
    private const string Test = "test";

    private static readonly ImmutableHashSet<string> Openers =
    [
        "machine", "procedure", "stage", "work", "refit", "part", "energy", "fluid", "control", "held", "wired", "piped", "covered", "locked",
        "tool", "supply", "fastener", "clip", "connector", "line", "bond",
    ];

    /// <summary>The blocks that hold steps.</summary>
    private static readonly ImmutableHashSet<string> OfSteps = ["stage", "work", "refit", Test];

    /// <summary>The words that open a block like the one around.</summary>
    private static readonly ImmutableHashSet<string> Branches = ["each", "when"];

    /// <summary>The words that begin a sentence.</summary>
    private static readonly ImmutableHashSet<string> Beginnings =
    [
        "undo", "loosen", "release", "unplug", "disconnect", "cut", "aside", "remove", "set", "isolate", "empty", "support", "strip",
        "replace", "repair", "clean", "inspect", "measure", "adjust", "task", "check", "discard", "do", "goal", "stage", "work", "refit",
        "fasten", "tighten", "engage", "plug", "connect", "renew", "return", "fit", "restore", "fill", "unsupport",
        "part", "held", "wired", "piped", "covered", "locked", "behind", "needs", "carries", "to", "tool", "drive", "energy", "fluid", "control", "each", "when", "use", "machine", "procedure",
        "how", "photo", "figure", "verbs", "store", "people", "time", "torque", "ppe", "uses", "hazard", "renew", "danger", "warning", "caution", "notice", "grip", "pattern",
    ];

    /// <summary>The words that begin a sentence in one sort of block and are as good as any name in all others.</summary>
    private static readonly ImmutableDictionary<string, ImmutableHashSet<string>> BeginningsIn = new Dictionary<string, ImmutableHashSet<string>>
    {
        ["energy"] = ["verify", "voltage"],
        ["part"] = ["way"],
        ["stage"] = ["verify", "record", "pause"],
        ["work"] = ["record", "pause"],
        ["refit"] = ["test", "while", "record", "pause", "snug", "retorque"],
        [Test] = ["power", "while", "record"],
    }.ToImmutableDictionary();

    /// <summary>The words and marks that something has to follow.</summary>
    private static readonly ImmutableHashSet<string> Joining =
        ["by", "as", "on", "to", "at", "of", "in", "with", "without", "after", "before", "is", "not", "and", "expect", "or", ",", "±", "+", "..", "<", ">", "<=", ">=", "["];

    /// <summary>Which of the words is the bracket that is still open, of an index or of the arguments of a call; -1 where none is.</summary>
    public int OpenBracket
    {
        get
        {
            var open = -1;
            for (var i = 0; i < Words.Length; i++)
            {
                open = Words[i] is "[" or "(" ? i : Words[i] is "]" or ")" ? -1 : open;
            }

            return open;
        }
    }

    /// <summary>Reads the place of an offset.</summary>
    public static TypingPlace At(Asked asked, int offset)
    {
        var content = asked.Tree.Text.Content;
        var from = JobsInText.DeclarationAt(asked, offset)?.Span.Start ?? 0;
        var blocks = new Stack<string>();
        var sentence = new List<(string Word, int Start)>();
        foreach (var token in asked.Tree.TokensFrom(from).TakeWhile(token => token.Span.Start < offset))
        {
            var isTyped = token.Span.End >= offset;
            switch (token.Category)
            {
                case TokenCategory.Text or TokenCategory.Comment when isTyped && token.Span.End > offset || (token.Category == TokenCategory.Comment && isTyped):
                    return new TypingPlace("", [], offset, IsInText: true);
                case TokenCategory.WhiteSpace or TokenCategory.LineBreak or TokenCategory.Comment:
                    break;
                case TokenCategory.Punctuation when content[token.Span.Start] == '{':
                    blocks.Push(Opened(sentence, blocks.FirstOrDefault() ?? ""));
                    sentence.Clear();
                    break;
                case TokenCategory.Punctuation when content[token.Span.Start] == '}':
                    blocks.TryPop(out _);
                    sentence.Clear();
                    break;
                case TokenCategory.Name or TokenCategory.Keyword or TokenCategory.Number when isTyped:
                    break;
                default:
                    sentence.Add((content.Substring(token.Span.Start, token.Span.Length), token.Span.Start));
                    break;
            }
        }

        var block = blocks.FirstOrDefault() ?? "";
        if (sentence.Count > 0 && IsOver(sentence[^1], block, content, offset))
        {
            sentence.Clear();
        }

        var begin = sentence.FindLastIndex(word => Begins(word.Word, block) && !IsWithin(sentence, word));
        var words = begin < 0 ? sentence : sentence[begin..];
        return new TypingPlace(block, [.. words.Select(word => word.Word)], words.Count > 0 ? words[0].Start : offset, IsInText: false);
    }

    /// <summary>The block that a sentence opens.</summary>
    private static string Opened(List<(string Word, int Start)> sentence, string around)
    {
        var isOfSteps = OfSteps.Contains(around);
        var opener = sentence.FindLast(word =>
            Branches.Contains(word.Word)
            || (isOfSteps
                ? (IsVerb(word.Word) || IsTest(word.Word, around)) && !IsWithin(sentence, word)
                : Openers.Contains(word.Word) || (word.Word == "verify" && around == "energy"))).Word;
        return opener switch
        {
            null => around,
            "refit" when around == Action => ActionInRefit,
            "measure" or "task" or "check" or "record" or "pause" when isOfSteps => TextAction,
            Test when IsTest(opener, around) => Test,
            _ when Branches.Contains(opener) => around,
            _ => isOfSteps ? Action : opener,
        };
    }

    private static bool Begins(string word, string block) => Beginnings.Contains(word) || (BeginningsIn.TryGetValue(block, out var words) && words.Contains(word));

    private static bool IsTest(string word, string around) => word == Test && around == "refit";

    private static bool IsVerb(string word) => ActionTable.Rows.Any(row => row.Word == word);

    /// <summary>Whether the sentence is over for one who types on the next line: its last word is a name or a text, and asks for no more.</summary>
    private static bool IsOver((string Word, int Start) last, string block, string content, int offset) =>
        !Begins(last.Word, block)
        && !Joining.Contains(last.Word)
        && content.AsSpan(last.Start + last.Word.Length, offset - last.Start - last.Word.Length).ContainsAny('\n', '\r');

    /// <summary>
    /// Whether a word that could begin a sentence stands within one: the verb behind <c>goal</c>, <c>before</c> or <c>after</c>,
    /// <c>to</c> behind <c>set</c>.
    /// </summary>
    private static bool IsWithin(List<(string Word, int Start)> sentence, (string Word, int Start) word)
    {
        var index = sentence.IndexOf(word);
        return index > 0 && (sentence[index - 1].Word is "goal" or "before" or "after" || (word.Word == "to" && sentence.Take(index).Any(one => one.Word == "set")));
    }
}
