using System.Collections.Frozen;

namespace ProcScript.Analysis.Prose;

/// <summary>The verbs that workshop instructions are made of, and how English forms them; from memory and from the demo library.</summary>
internal static class EnglishVerbs
{
    /// <summary>Verbs that say what to do, in the form in which they command.</summary>
    private static readonly FrozenSet<string> Commands = Set(
        "add adjust align apply ask attach bend bleed block blow bolt bring brush cap carry catch charge check clamp clean clear close collect "
        + "compare connect cool counter-hold cover cut disconnect discard drain draw drill drive dry empty engage evacuate fasten feed fill find fit "
        + "flush fold follow free grease guide hang heat hold inspect install insulate isolate keep label lay lead lean leave let lever "
        + "lift line listen load lock look loosen lower lubricate make mark match measure mount move note oil open paint pick pinch place plug "
        + "point pour prepare press prime prop prove prise pry pull pump purge push put raise read recharge recover record refit refill release "
        + "remove renew repair replace return rinse roll rotate route run scrape screw seal secure set shrink shut siphon slacken slide slip "
        + "soak splice spray squeeze stand start stop store strip support swing switch tag take tap tape test thread tie tighten tilt tip "
        + "top torque touch trim try tug turn twist unbolt unclip undo unhook unlock unplug unscrew unwind wait wash wear wind wipe wrap "
        + "write");

    /// <summary>Verbs of something that goes on: what is kept or held meanwhile is no second instruction.</summary>
    private static readonly FrozenSet<string> Lasting = Set("keep hold stay leave let wait watch listen look make stand");

    /// <summary>Verbs whose instruction is a step of work, not a way to keep out of harm.</summary>
    private static readonly FrozenSet<string> Work = Set(
        "connect drain fasten fit install loosen mount reassemble refit refill remove replace reinstall tighten unbolt undo unplug unscrew");

    private static readonly FrozenSet<string> IrregularParticiples = Set(
        "bent bled blown cut done drawn driven fed found held hung kept laid led left let made put read run set shut slid split stuck swung taken "
        + "undone wound woven written");

    /// <summary>Words that may follow a verb that commands, where it could as well be a noun: what it is done to, or which way.</summary>
    private static readonly FrozenSet<string> AfterCommand = Set(
        "a again all an any around at away back both by down each every from home in into it its off on once one onto open out over that the "
        + "them these this those through to together two until up with your");

    /// <summary>Whether the word commands.</summary>
    public static bool IsCommand(string word) => Commands.Contains(word);

    /// <summary>Whether it commands something that goes on beside what else is done.</summary>
    public static bool IsLasting(string word) => Lasting.Contains(word);

    /// <summary>Whether it commands a step of work.</summary>
    public static bool IsWork(string word) => Work.Contains(word);

    /// <summary>Whether a word that commands may stand before this one.</summary>
    public static bool MayFollow(string word) => AfterCommand.Contains(word) || word is ['{', ..] || char.IsAsciiDigit(word[0]);

    /// <summary>Whether the word tells of something that is done to a thing: <c>removed</c>, <c>held</c>.</summary>
    public static bool IsParticiple(string word) =>
        IrregularParticiples.Contains(word) || (word.EndsWith("ed", StringComparison.OrdinalIgnoreCase) && Bases(word[..^2]).Append(word[..^1]).Any(IsCommand));

    /// <summary>Whether the word is the <c>-ing</c> form of a verb that commands.</summary>
    public static bool IsGerund(string word) =>
        word.Length > 4 && word.EndsWith("ing", StringComparison.OrdinalIgnoreCase) && Bases(word[..^3]).Append(word[..^3] + "e").Any(IsCommand);

    /// <summary>Whether the word says that somebody or something does it: <c>moves</c>, <c>is</c>, <c>can</c>.</summary>
    public static bool IsFinite(string word) => word.ToLowerInvariant() is "is" or "are" or "was" or "were" or "has" or "have" or "does" or "do"
        or "can" or "could" or "may" or "might" or "must" or "shall" or "should" or "will" or "would" or "causes" or "gives" or "lets"
        || (word.EndsWith('s') && (IsCommand(word[..^1]) || (word.EndsWith("es", StringComparison.Ordinal) && IsCommand(word[..^2]))));

    /// <summary>The form that commands, for a stem with its last letter doubled or not.</summary>
    private static IEnumerable<string> Bases(string stem) =>
        stem is [.., var before, var last] && before == last ? [stem, stem[..^1]] : stem.EndsWith('i') ? [stem, stem[..^1] + "y"] : [stem];

    private static FrozenSet<string> Set(string words) => words.Split(' ').ToFrozenSet(StringComparer.OrdinalIgnoreCase);
}
