using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Model.Binding.Properties;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The ways to begin, block by block.</summary>
internal static class Sentences
{
    private static readonly Sentence When = new("when", "only where it holds", "when ${1:option} {\n  $0\n}");

    private static readonly ImmutableArray<Sentence> Branches =
        [new("each", "once for each value", "each ${1:side} in ${2:left, right} {\n  $0\n}"), When];

    private static readonly ImmutableArray<Sentence> File =
    [
        new("use", "another file", "use \"${1:file.proc}\""),
        new("machine", "a machine", "machine ${1:name} \"${2:title}\" {\n  $0\n}"),
        new("procedure", "a procedure", "procedure ${1:name} \"${2:title}\" on ${3:machine} {\n  goal ${4:replace} ${5:item}\n  stage \"${6:title}\" {\n    $0\n  }\n}"),
        new("tool", "a hand tool", "tool ${1:name} \"${2:title}\""),
        new("supply", "what is used up", "supply ${1:name} \"${2:title}\""),
        new("fastener", "bolts, screws, nuts", "fastener ${1:name} \"${2:title}\" {\n  drive  ${3:tool}\n  torque ${4:22 ± 2} N.m\n}"),
        new("clip", "snapped, pushed", "clip ${1:name} \"${2:title}\" { tool ${3:tool} }"),
        new("connector", "electrical", "connector ${1:name} \"${2:title}\" { release \"${3:how}\" }"),
        new("line", "a pipe or hose union", "line ${1:name} \"${2:title}\" { tool ${3:tool} }"),
        new("bond", "destroyed when it is opened", "bond ${1:name} \"${2:title}\" { tool ${3:tool} }"),
        new("certificate", "what somebody must hold", "certificate ${1:name} \"${2:title}\""),
    ];

    private static readonly ImmutableArray<Sentence> Procedure =
    [
        new("goal", "what the job is for"),
        new("stage", "a card of the work pack", "stage \"${1:title}\" {\n  $0\n}"),
        new("do", "the strip of another procedure"),
        new("work", "between strip and refit", "work {\n  $0\n}"),
        new("refit", "rules and checks", "refit {\n  $0\n}"),
        .. PropertySentences.For("procedure"), .. Branches,
    ];

    private static readonly ImmutableArray<Sentence> Machine =
    [
        new("part", "a part", "part ${1:name} \"${2:title}\" {\n  $0\n}"),
        new("energy", "an energy that can hurt", "energy ${1:name} \"${2:title}\" {\n  isolate \"${3:how}\"\n  verify  \"${4:how}\"\n  restore \"${5:how}\"\n}"),
        new("fluid", "a fluid", "fluid ${1:name} \"${2:title}\" {\n  charge ${3:1 L}\n  empty  \"${4:how}\"\n  fill   \"${5:how}\"\n}"),
        new("control", "something with positions", "control ${1:name} \"${2:title}\" { ${3:off}, ${4:on} }"),
        new("place", "where only so many people work at once", "place ${1:name} \"${2:title}\" room for ${3:1}"),
        new("option", "what a machine may have or not", "option ${1:name} \"${2:title}\""),
        .. Branches,
    ];

    private static readonly ImmutableArray<Sentence> Part =
    [
        new("held", "fasteners, clips, bonds", "held by ${1:4} ${2:kind} as ${3:name}"),
        new("wired", "connectors", "wired by ${1:1} ${2:kind} as ${3:name} on ${4:energy}"),
        new("piped", "lines", "piped by ${1:1} ${2:kind} as ${3:name} carries ${4:fluid}"),
        new("aside", "out of the way without coming off", "aside \"${1:how}\" needs ${2:joint}"),
        new("part", "a part inside it", "part ${1:name} \"${2:title}\" {\n  $0\n}"),
        .. PropertySentences.For("part"), .. Branches,
    ];

    private static readonly ImmutableArray<Sentence> Readings =
    [
        new("measure", "a reading to write down", "measure \"${1:what}\" with ${2:tool} expect ${3:<= 0.5 V}"),
        new("task", "something else to do", "task \"${1:what}\""),
        new("check", "something to check", "check \"${1:what}\""),
        new("record", "words to write down", "record \"${1:what}\""),
    ];

    private static readonly ImmutableArray<Sentence> Texts =
    [
        .. Readings,
        new("pause", "the job stops and is handed over", "pause \"${1:why}\" { time ${2:12 h} }"),
        new("discard", "what does not go back", "discard ${1:item} because \"${2:why}\""),
    ];

    private static readonly ImmutableArray<Sentence> Stage =
        [.. Verbs(ActionPhase.Strip), new("fit", "a temporary part goes on"), new("do", "the strip of another procedure"), .. Verbs(ActionPhase.Work), .. Texts, .. AlertSentences.BothWays, .. AlertSentences.OneWay, .. Branches];

    private static readonly ImmutableArray<Sentence> Work = [.. Verbs(ActionPhase.Work), .. Texts, .. AlertSentences.BothWays, .. Branches];

    private static readonly ImmutableArray<Sentence> Refit =
    [
        .. Verbs(ActionPhase.Refit),
        new("check", "a check at its place", "check \"${1:what}\" ${2|after,before|} ${3:fit} ${4:item}"),
        new("record", "words to write down at their place", "record \"${1:what}\" after ${2:fit} ${3:item}"),
        new("pause", "the job stops at its place and is handed over", "pause \"${1:why}\" after ${2:fit} ${3:item} { time ${4:12 h} }"),
        new("test", "under power, before the machine is whole", "test \"${1:what}\" before ${2:fit} ${3:item} {\n  power ${4:energy}\n  check \"${5:what}\"\n  $0\n}"),
        new("restore while", "what is still open when it comes back", "restore ${1:energy} while ${2:item} open because \"${3:why}\""),
        new("discard", "what does not go back", "discard ${1:item} because \"${2:why}\""),
        .. AlertSentences.BothWays, .. Branches,
    ];

    private static readonly ImmutableArray<Sentence> Test =
    [
        new("power", "the energies that are live meanwhile"),
        .. Readings,
        new("while", "what is still open meanwhile", "while ${1:item} open because \"${2:why}\""),
        .. AlertSentences.BothWays,
    ];

    /// <summary>The ways to begin in a block.</summary>
    public static ImmutableArray<Sentence> For(string block) => block switch
    {
        "" => File,
        "machine" => Machine,
        "part" => Part,
        "procedure" => Procedure,
        "stage" => Stage,
        "work" => Work,
        "refit" => Refit,
        "test" => Test,
        _ when PropertyWords.IsOfCatalog(block) => PropertySentences.For(block),
        _ => [.. PropertySentences.For(block), When],
    };

    /// <summary>Whether a word begins a sentence of any block.</summary>
    public static bool IsKnown(string word) => Known.Contains(word);

    private static FrozenSet<string> Known { get; } = new[] { File, Machine, Part, Procedure, Stage, Work, Refit, Test }
        .SelectMany(block => block)
        .Select(sentence => sentence.Label.Split(' ')[0])
        .ToFrozenSet(StringComparer.Ordinal);

    private static IEnumerable<Sentence> Verbs(ActionPhase phase) => ActionTable.Rows
        .Where(row => row.Phase.HasFlag(phase) && row.Targets != ActionTargets.None && !row.IsInserted && row.Word != "discard")
        .Select(row => new Sentence(row.Word, row.Phrase("…")));
}
