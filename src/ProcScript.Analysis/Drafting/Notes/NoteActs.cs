using System.Collections.Frozen;
using System.Collections.Immutable;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>What the verbs of the language ask for, where notes use them or say something else for them.</summary>
internal static class NoteActs
{
    /// <summary>The verbs, each with what it asks for.</summary>
    public static ImmutableArray<(string Verb, NoteAct Act)> OfVerbs { get; } =
    [
        ("undo", NoteAct.Undo), ("loosen", NoteAct.Loosen), ("release", NoteAct.Release), ("unplug", NoteAct.Unplug), ("disconnect", NoteAct.Disconnect),
        ("cut", NoteAct.Cut), ("aside", NoteAct.Aside), ("remove", NoteAct.Remove), ("set", NoteAct.Set), ("isolate", NoteAct.Isolate),
        ("empty", NoteAct.Empty), ("support", NoteAct.Support), ("replace", NoteAct.Replace), ("clean", NoteAct.Clean), ("inspect", NoteAct.Inspect),
        ("repair", NoteAct.Repair), ("adjust", NoteAct.Adjust), ("measure", NoteAct.Measure), ("check", NoteAct.Check), ("verify", NoteAct.Check),
        ("fit", NoteAct.PutBack), ("fasten", NoteAct.PutBack), ("tighten", NoteAct.PutBack), ("connect", NoteAct.PutBack), ("restore", NoteAct.PutBack),
        ("fill", NoteAct.PutBack), ("discard", NoteAct.Tend),
    ];

    private static readonly FrozenDictionary<string, NoteAct> ByVerb = OfVerbs.ToFrozenDictionary(row => row.Verb, row => row.Act, StringComparer.Ordinal);

    /// <summary>What a verb of the language asks for; null where notes never mean it.</summary>
    public static NoteAct? Of(string verb) => ByVerb.TryGetValue(verb, out var act) ? act : null;
}
