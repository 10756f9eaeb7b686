using System.Collections.Immutable;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>The verbs that mechanics write, and what they ask for.</summary>
internal static class NoteVerbs
{
    private static readonly ImmutableArray<(string Words, NoteAct Act)> All =
    [
        .. Rows(NoteAct.Undo, "undo", "unbolt", "unscrew", "screw out", "screw off", "spin off", "unfasten"),
        .. Rows(NoteAct.Loosen, "loosen", "slacken", "slacken off", "back off", "crack off", "ease off"),
        .. Rows(NoteAct.Release, "unclip", "release", "unsnap", "unlatch", "unhook", "pop off", "pop out", "prise off", "prise out", "pry off", "pry out", "snap off", "undo the clips of"),
        .. Rows(NoteAct.Unplug, "unplug", "pull the plug of", "pull the plug on"),
        .. Rows(NoteAct.Disconnect, "disconnect", "detach", "uncouple"),
        .. Rows(NoteAct.Cut, "cut", "cut off", "cut through", "snip", "snip off", "slit"),
        .. Rows(
            NoteAct.Aside,
            "swing aside", "swing out", "swing away", "move aside", "move out of the way", "push aside", "push out of the way", "fold back", "fold down", "fold up", "fold away",
            "tilt", "tilt up", "hinge up", "hinge down", "tie back", "lay aside", "set aside", "put aside", "open", "flip up"),
        .. Rows(
            NoteAct.Remove,
            "remove", "take off", "take out", "take away", "lift off", "lift out", "lift away", "lift up and out", "pull off", "pull out", "pull away", "withdraw", "slide off",
            "slide out", "extract", "slip off", "dismount", "draw off", "draw out", "knock out", "drive out", "press off", "press out", "get out", "lift", "dismantle"),
        .. Rows(NoteAct.Set, "set", "turn", "move", "put", "switch", "shift", "raise", "lower"),
        .. Rows(
            NoteAct.Isolate,
            "isolate", "switch off", "turn off", "shut off", "shut down", "power off", "power down", "lock out", "lock off", "pull the mains plug", "pull the main switch",
            "pull the plug", "pull the fuse", "make safe", "de-energise", "de-energize", "depressurise", "depressurize", "let the pressure off", "release the pressure"),
        .. Rows(NoteAct.Empty, "drain", "drain off", "drain out", "empty", "let out", "recover", "siphon off", "pump out"),
        .. Rows(NoteAct.Support, "support", "prop", "prop up", "jack up", "hold up", "sling", "take the weight of"),
        .. Rows(NoteAct.Replace, "replace", "renew", "change", "swap", "swap out", "fit a new", "fit new", "put in a new", "put in new", "install a new", "install new"),
        .. Rows(NoteAct.Clean, "clean", "clean out", "wipe", "wipe down", "wipe off", "wash", "degrease", "blow out", "brush off"),
        .. Rows(NoteAct.Inspect, "inspect", "look at", "look over", "examine"),
        .. Rows(NoteAct.Repair, "repair", "mend"),
        .. Rows(NoteAct.Adjust, "adjust", "align"),
        .. Rows(NoteAct.Measure, "measure", "gauge"),
        .. Rows(NoteAct.Check, "check", "test", "verify", "make sure", "ensure", "prove", "confirm", "test run", "try", "run"),
        .. Rows(
            NoteAct.PutBack,
            "refit", "reassemble", "reinstall", "install", "fit", "put back", "bolt back", "screw back", "tighten", "retighten", "torque", "torque up", "refill", "fill", "fill up",
            "reconnect", "plug in", "assemble", "reverse", "refitting", "reassembly", "assembly", "restore", "switch on", "turn on"),
        .. Rows(NoteAct.Wait, "wait", "let it", "leave it", "allow"),
    ];

    private static readonly ImmutableArray<(string Words, NoteAct Act)> Table = [.. All.OrderByDescending(row => row.Words.Length)];

    // Between the two words of a verb stands the thing, and no more.
    private const int MostWordsBetween = 6;

    /// <summary>The verb that a sentence begins with, the longest that fits, and what stands behind it; null where it begins with none.</summary>
    public static (NoteAct Act, string Object)? Of(string sentence) =>
        Leading(sentence, words => words.Contains(' ', StringComparison.Ordinal)) ?? Parted(sentence) ?? Leading(sentence, words => !words.Contains(' ', StringComparison.Ordinal));

    private static (NoteAct Act, string Object)? Leading(string sentence, Func<string, bool> isMeant)
    {
        foreach (var (words, act) in Table)
        {
            if (isMeant(words) && sentence.StartsWith(words, StringComparison.OrdinalIgnoreCase) && (sentence.Length == words.Length || !char.IsLetterOrDigit(sentence[words.Length])))
            {
                return (act, sentence[words.Length..].Trim());
            }
        }

        return null;
    }

    /// <summary>Verbs of which the second word stands behind the thing: <c>take the guard off</c>, <c>switch the machine off at the wall</c>.</summary>
    private static (NoteAct Act, string Object)? Parted(string sentence)
    {
        var words = sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        foreach (var (phrase, act) in Table)
        {
            if (phrase.Split(' ') is not [var verb, var second] || words.Length < 3 || !words[0].Equals(verb, StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            var at = Array.FindIndex(words, 1, word => word.TrimEnd('.', '!', ',', ';').Equals(second, StringComparison.OrdinalIgnoreCase));
            if (at is > 1 and <= MostWordsBetween + 1)
            {
                var end = words[at].Length > second.Length ? "," : "";
                return (act, string.Join(' ', words[1..at].Concat(words[(at + 1)..]).Select((word, index) => index == at - 2 && at < words.Length - 1 ? word + end : word)));
            }
        }

        return null;
    }

    private static IEnumerable<(string Words, NoteAct Act)> Rows(NoteAct act, params ReadOnlySpan<string> phrases) =>
        phrases.ToArray().Select(phrase => (phrase, act));
}
