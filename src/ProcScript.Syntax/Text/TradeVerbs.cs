using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Syntax.Text;

/// <summary>What people of the trade say for a verb of the language, in one word or several. One phrase may stand for more than one verb.</summary>
public static class TradeVerbs
{
    /// <summary>Every phrase with a verb that it stands for; of several verbs the usual one comes first.</summary>
    public static ImmutableArray<(string Phrase, string Verb)> All { get; } =
    [
        // Off.
        .. Rows("undo", "unbolt", "unscrew", "screw out", "screw off", "screw away", "spin off", "unfasten"),
        .. Rows("loosen", "slacken", "slacken off", "back off", "crack off", "ease off"),
        .. Rows(
            "release",
            "unclip", "unsnap", "unlatch", "unhook", "unfasten", "pop", "pop off", "pop out", "prise off", "prise out", "prise up", "pry off", "pry out", "pry up", "snap off",
            "undo the clips of"),
        .. Rows("unplug", "pull the plug of", "pull the plug on"),
        .. Rows("disconnect", "detach", "uncouple"),
        .. Rows("cut", "cut off", "cut through", "snip", "snip off", "slit"),
        .. Rows(
            "aside",
            "swing aside", "swing out", "swing away", "move aside", "move out of the way", "push aside", "push out of the way", "fold back", "fold down", "fold up", "fold away",
            "tilt", "tilt up", "hinge up", "hinge down", "tie back", "lay aside", "set aside", "put aside", "open", "flip up"),
        .. Rows(
            "remove",
            "take off", "take out", "take away", "lift off", "lift out", "lift away", "lift up and out", "pull", "pull off", "pull out", "pull away", "push out", "withdraw", "slide", "slide off",
            "slide out", "slide away", "extract", "slip off", "detach", "dismount", "draw off", "draw out", "draw away", "knock out", "drive out", "press off", "press out", "get off",
            "get out", "get away", "lever off", "lever out", "lever away", "prise off", "prise out", "prise away", "pry off", "pry out", "pry away", "lift", "dismantle"),
        .. Rows("unplug", "pull"),
        .. Rows(
            "isolate",
            "switch off", "turn off", "shut off", "shut down", "power off", "power down", "lock out", "lock off", "loto",
            "pull the mains plug", "pull the main switch", "pull the plug", "pull the fuse", "make safe", "deenergise", "deenergize", "de-energise", "de-energize", "depressurise",
            "depressurize", "let the pressure off", "release the pressure"),
        .. Rows("empty", "drain", "drain off", "drain out", "drain down", "let out", "recover", "siphon off", "pump out"),
        .. Rows("support", "prop", "prop up", "jack up", "hold up", "sling", "take the weight of"),
        .. Rows("set", "turn", "move", "put", "switch", "shift", "raise", "lower"),

        // On.
        .. Rows(
            "fit",
            "install", "reinstall", "refit", "mount", "insert", "attach", "assemble", "reassemble", "put back", "put in", "put on", "push back", "push in", "push on", "place back",
            "place in", "place on"),
        .. Rows("fasten", "screw", "screw back", "bolt back"),
        .. Rows("tighten", "retighten", "torque up"),
        .. Rows("plug", "plug in"),
        .. Rows("connect", "attach", "reconnect"),
        .. Rows("restore", "energise", "energize", "switch on", "turn on"),
        .. Rows("fill", "refill", "fill up"),

        // Work.
        .. Rows(
            "replace",
            "exchange", "swap", "swap out", "change", "renew", "r&r", "fit a new", "fit new", "put in a new", "put in new", "install a new", "install new"),
        .. Rows("repair", "mend", "fix"),
        .. Rows("clean", "clean out", "clean off", "clean up", "wipe", "wipe down", "wipe off", "wash", "degrease", "blow out", "brush off"),
        .. Rows("inspect", "examine", "look at", "look over"),
        .. Rows("adjust", "align"),
        .. Rows("measure", "gauge"),
        .. Rows("check", "test", "make sure", "ensure", "prove", "confirm", "test run", "try", "run"),
        .. Rows("discard", "throw", "throw off", "throw out", "throw away"),
    ];

    private static readonly FrozenDictionary<string, ImmutableArray<string>> ByPhrase = All
        .GroupBy(row => row.Phrase, row => row.Verb, StringComparer.OrdinalIgnoreCase)
        .ToFrozenDictionary(group => group.Key, group => group.ToImmutableArray(), StringComparer.OrdinalIgnoreCase);

    /// <summary>The verbs that a phrase stands for, the usual one first; none where it is no phrase of the trade.</summary>
    public static ImmutableArray<string> Of(ReadOnlySpan<char> phrase) =>
        ByPhrase.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(phrase, out var verbs) ? verbs : [];

    private static IEnumerable<(string Phrase, string Verb)> Rows(string verb, params ReadOnlySpan<string> phrases) => phrases.ToArray().Select(phrase => (phrase, verb));
}
