using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ProcScript.Model.Binding.Properties;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The properties of the blocks that hold nothing else.</summary>
internal static partial class PropertySentences
{
    /// <summary>How each property is written; which of them a block takes, the model says.</summary>
    private static readonly FrozenDictionary<string, Sentence> ByKeyword = new Sentence[]
    {
        new("after", "energies that are isolated before this one"),
        new("at", "where it sits", "at \"${1:round the rim}\""),
        new("attended", "how long somebody stands by", "attended ${1:5 min}"),
        new("bag", "the bag that its hardware goes into", "bag \"${1:A}\""),
        new("behind", "hidden by parts"),
        new("bleed", "what is left is let out", "bleed \"${1:how}\""),
        new("cap", "what its openings are capped with", "cap ${1:2} ${2:tool}"),
        new("captive", "it stays in its part", "captive"),
        new("carries", "the fluid in it"),
        new("certified", "what somebody must hold for it"),
        new("charge", "how much belongs in", "charge ${1:1 ± 0.1 L}"),
        new("check", "something to check then", "check \"${1:what}\""),
        new("coating", "what is on the thread", "coating \"${1:zinc}\""),
        new("covered", "caps or plates over it", "covered by ${1:4} ${2:kind} as ${3:name}"),
        new("cure", "how long it takes to set", "cure ${1:30 min}"),
        new("drive", "the tool that turns it"),
        new("empty", "how it is let out", "empty \"${1:how}\""),
        new("engage", "how it goes on", "engage \"${1:how}\""),
        new("figure", "a picture to look at, and what it shows", "figure \"${1:img/lid.jpg}\" \"${2:what to look for}\""),
        new("strip figure", "a picture on the way out alone", "strip figure \"${1:img/lid.jpg}\" \"${2:what to look for}\""),
        new("refit figure", "a picture on the way back alone", "refit figure \"${1:img/lid.jpg}\" \"${2:what to look for}\""),
        new("fill", "how it is filled in", "fill \"${1:how}\""),
        new("frequency", "lifts in a minute", "frequency ${1:0.2 lifts/min}"),
        new("grade", "strength: 8.8, A2-70, 5", "grade ${1:8.8}"),
        new("grip", "how well it can be held: good, fair, poor", "grip ${1:fair}"),
        new("hazard", "what it does when it comes loose"),
        new("height", "where the hands take hold", "height ${1:75 .. 110 cm}"),
        new("hoist", "lifting gear carries it", "hoist"),
        new("how", "how it is done", "how \"${1:how}\""),
        new("in", "the place in which one works on it"),
        new("isolate", "how it is cut off", "isolate \"${1:how}\""),
        new("keep in order", "each goes back into its own place", "keep in order"),
        new("length", "of the shank", "length ${1:25 mm}"),
        new("lock", "how it is kept from coming back", "lock \"${1:how}\""),
        new("locked", "split pins, wire or tab washers that lock it", "locked by ${1:2} ${2:kind} as ${3:name}"),
        new("mark", "what to mark before it comes apart", "mark \"${1:one punch dot across both}\""),
        new("mass", "its own mass", "mass ${1:5 kg}"),
        new("measured", "what to measure on it when it is off", "measured \"${1:thickness}\""),
        new("needs", "further conditions"),
        new("oiled", "it goes in with oil on the thread", "oiled"),
        new("on", "the energy in it"),
        new("pattern", "the order of tightening: star, listed, inside out, none", "pattern ${1:star}"),
        new("people", "how many hands", "people ${1:2}"),
        new("photo", "what to take a picture of", "photo \"${1:what}\""),
        new("ppe", "protective equipment", "ppe \"${1:gloves}\""),
        new("prepare", "what comes before it is shut down", "prepare \"${1:how}\""),
        new("prevailing", "the torque that it takes to run it on", "prevailing ${1:1.5} N.m"),
        new("range", "the torques that it does", "range ${1:10 .. 50} N.m"),
        new("reach", "how far out the load is", "reach ${1:40 cm}"),
        new("refit", "what it is like on the way back", "refit {\n  $0\n}"),
        new("verbs", "what the trade calls taking it off and putting it back", "verbs \"${1:press off}\" \"${2:press on}\""),
        new("release", "how it comes off", "release \"${1:how}\""),
        new("renew with", "it is renewed when these come off"),
        new("restore", "how it comes back", "restore \"${1:how}\""),
        new("reuse because", "why the old ones may go back", "reuse because \"${1:why}\""),
        new("seals", "rings that are renewed with it", "seals ${1:1} ${2:supply}"),
        new("shutdown", "how the machine is stopped", "shutdown \"${1:how}\""),
        new("signed", "a second person signs for it", "signed"),
        new("single use", "a new one goes back", "single use"),
        new("size", "of the tool", "size ${1:13 mm}"),
        new("spare", "how many more to order", "spare ${1:10 %}"),
        new("store", "where it lies meanwhile", "store \"${1:where}\""),
        new("stretch", "a stretch bolt: always new", "stretch"),
        new("takes", "how long it runs out", "takes ${1:5 min}"),
        new("temporary", "only there for the job", "temporary"),
        new("thread", "of the bolt; a left-hand one with LH", "thread ${1:M8x1.25}"),
        new("thread locker", "it goes in with thread locker", "thread locker"),
        new("time", "how long it takes", "time ${1:5 min}"),
        new("to", "the other part that it ties"),
        new("tool", "what it takes"),
        new("torque", "how tight", "torque ${1:22 ± 2} N.m"),
        new("twist", "how far the body turns", "twist ${1:30°}"),
        new("uses", "what is used up", "uses ${1:5 mL} of ${2:supply}"),
        new("verify", "how one knows that it is gone", "verify \"${1:how}\""),
        new("voltage", "its nominal voltage", "voltage ${1:230 V} ${2:ac}"),
        new("wait", "how long before it is gone", "wait ${1:60 s}"),
        new("way behind", "hidden by parts, for its own way out alone"),
        new("way needs", "further conditions, for its own way out alone"),
        new("with", "what a new part adds or takes", "with ${1:pump} add ${2:40 mL}"),
    }.Concat(AlertSentences.BothWays).Concat(AlertSentences.OneWay).ToFrozenDictionary(sentence => sentence.Label, StringComparer.Ordinal);

    /// <summary>What could stand behind the word of a property; null where it is not a figure or a text.</summary>
    public static string? ExampleOf(string property) => ByKeyword.GetValueOrDefault(property) is { Body: { Length: > 0 } body } && body.StartsWith(property + " ", StringComparison.Ordinal)
        ? Hole().Replace(body[(property.Length + 1)..], "$1")
        : null;

    [GeneratedRegex(@"\$\{\d+:([^}]*)\}")]
    private static partial Regex Hole();

    // What most blocks begin with, whatever they are; the others follow in the order of the alphabet.
    private static readonly ImmutableArray<string> Usual =
    [
        "thread", "length", "grade", "drive", "size", "mass", "charge", "hazard", "at", "to", "on", "carries", "behind", "needs", "how", "tool", "torque", "people",
        "isolate", "lock", "wait", "verify", "restore", "empty", "fill", "takes", "release", "engage", "covered", "ppe", "time", "bag", "store",
    ];

    /// <summary>The properties of a block, the usual ones first.</summary>
    public static ImmutableArray<Sentence> For(string block) =>
    [
        .. (block switch
        {
            TypingPlace.Action => PropertyWords.InActions,
            TypingPlace.TextAction => PropertyWords.InTexts,
            TypingPlace.ActionInRefit => PropertyWords.InRefits,
            _ => PropertyWords.In(block),
        }).OrderBy(keyword => Usual.IndexOf(keyword) is >= 0 and var at ? at : Usual.Length).Select(keyword => ByKeyword.GetValueOrDefault(keyword) ?? new Sentence(keyword, "")),
    ];
}
