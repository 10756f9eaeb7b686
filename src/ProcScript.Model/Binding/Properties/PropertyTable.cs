using System.Collections.Frozen;
using System.Collections.Immutable;
using static ProcScript.Model.Binding.Properties.PropertyHolders;

namespace ProcScript.Model.Binding.Properties;

/// <summary>Which property stands where, and which may stand there more than once.</summary>
internal static class PropertyTable
{
    private const PropertyHolders Items = Energy | Fluid | Control | Part | Joint | Cover;
    private const PropertyHolders Doings = ItemAction | TextAction | Refit;
    private const PropertyHolders Lifts = Part | ItemAction | Refit;

    private static readonly FrozenDictionary<string, PropertyRow> Rows = new PropertyRow[]
    {
        new("after", Energy, Repeats: true),
        new("at", Joint | Cover),
        new("attended", Fluid),
        new("bag", ItemAction),
        new("behind", Items | Verification, Repeats: true),
        new("bleed", Energy),
        new("cap", Kind | Part | Joint),
        new("captive", Kind),
        new("carries", Joint | Kind),
        new("certified", Kind | Items | Doings | Procedure, Repeats: true),
        new("charge", Fluid),
        new("check", Doings, Repeats: true),
        new("coating", Kind),
        new("covered", Joint | Cover, Repeats: true),
        new("cure", Kind | Supply),
        new("drive", Kind),
        new("empty", Fluid),
        new("engage", Kind | Joint | Cover),
        new("figure", Part | Joint | Cover | Doings, Repeats: true),
        new("fill", Fluid),
        new("frequency", Lifts),
        new("grade", Kind),
        new("grip", Lifts),
        new("hazard", Kind | Energy | Fluid | Part | Joint | Cover, Repeats: true),
        new("height", Lifts),
        new("hoist", Lifts),
        new("how", Doings, Repeats: true),
        new("in", Items | Doings),
        new("isolate", Energy),
        new("keep in order", Kind | Part | Joint),
        new("length", Kind),
        new("lock", Energy),
        new("locked", Joint | Cover, Repeats: true),
        new("mark", Part | Joint, Repeats: true),
        new("mass", Part),
        new("measured", Part | Joint),
        new("needs", Items | ItemAction | TextAction | Verification, Repeats: true),
        new("oiled", Kind | Joint),
        new("on", Joint | Kind),
        new("pattern", Kind | Joint | ItemAction | Refit),
        new("people", Doings | Procedure),
        new("photo", Doings, Repeats: true),
        new("ppe", Kind | Items | Doings | Procedure, Repeats: true),
        new("prepare", Energy),
        new("prevailing", Kind | Joint),
        new("range", Tool),
        new("reach", Lifts),
        new("refit", ItemAction),
        new("release", Kind | Joint | Cover),
        new("renew with", Part | Joint | Cover, Repeats: true),
        new("restore", Energy),
        new("reuse because", Kind | Joint | Cover),
        new("seals", Kind, Repeats: true),
        new("shutdown", Energy),
        new("signed", Joint | Cover | Doings),
        new("single use", Supply | Kind | Part),
        new("size", Tool),
        new("spare", Kind),
        new("stretch", Kind | Joint),
        new("store", ItemAction | Refit),
        new("takes", Fluid),
        new("temporary", Part),
        new("thread", Kind),
        new("thread locker", Kind | Joint),
        new("time", Kind | Energy | Control | Part | Joint | Cover | Doings),
        new("to", Joint),
        new("tool", Kind | Items | Doings | Procedure | Verification, Repeats: true),
        new("torque", Kind | Joint | Cover | ItemAction | Refit),
        new("twist", Lifts),
        new("uses", Kind | Fluid | Part | Joint | Cover | Doings | Procedure, Repeats: true),
        new("verify", Energy),
        new("verbs", Kind | Energy | Fluid),
        new("voltage", Energy),
        new("wait", Energy),
        new("way behind", Part, Repeats: true),
        new("way needs", Part, Repeats: true),
        new("with", Fluid, Repeats: true),
        new("danger", Items | Doings | Procedure, Repeats: true),
        new("warning", Items | Doings | Procedure, Repeats: true),
        new("caution", Items | Doings | Procedure, Repeats: true),
        new("notice", Items | Doings | Procedure, Repeats: true),
        new("strip figure", Part | Joint | Cover, Repeats: true),
        new("refit figure", Part | Joint | Cover, Repeats: true),
        new("strip danger", Items | ItemAction, Repeats: true),
        new("strip warning", Items | ItemAction, Repeats: true),
        new("strip caution", Items | ItemAction, Repeats: true),
        new("strip notice", Items | ItemAction, Repeats: true),
        new("refit danger", Items | ItemAction, Repeats: true),
        new("refit warning", Items | ItemAction, Repeats: true),
        new("refit caution", Items | ItemAction, Repeats: true),
        new("refit notice", Items | ItemAction, Repeats: true),
    }.ToFrozenDictionary(row => row.Keyword, StringComparer.Ordinal);

    private static readonly ImmutableArray<(PropertyHolders Holder, string Words)> HolderWords =
    [
        (Tool, "a tool"),
        (Supply, "a supply"),
        (Certificate, "a certificate"),
        (Kind, "a kind of joint"),
        (Machine, "a machine"),
        (Energy, "an energy"),
        (Fluid, "a fluid"),
        (Control, "a control"),
        (Part, "a part"),
        (Joint, "a joint"),
        (Cover, "a cover"),
        (Procedure, "a procedure"),
        (ItemAction, "an action"),
        (TextAction, "a measurement, task or check"),
        (Refit, "a refit block of an action"),
        (Verification, "the verify of an energy"),
    ];

    /// <summary>The row of a property; null for a keyword that the language does not know.</summary>
    public static PropertyRow? Find(string keyword) => Rows.GetValueOrDefault(keyword);

    /// <summary>The keywords of all properties.</summary>
    public static IEnumerable<string> Keywords => Rows.Keys;

    /// <summary>The holders in words, with articles.</summary>
    public static ImmutableArray<string> Words(PropertyHolders holders) =>
        [.. HolderWords.Where(one => holders.HasFlag(one.Holder)).Select(one => one.Words)];

    /// <summary>The properties that a holder takes, in alphabetical order.</summary>
    public static IEnumerable<string> KeywordsOf(PropertyHolders holder) => Rows.Values
        .Where(row => row.Holders.HasFlag(holder))
        .Select(row => row.Keyword)
        .Order(StringComparer.Ordinal);
}

/// <summary>A property of the language.</summary>
/// <param name="Keyword">The word that names it.</param>
/// <param name="Holders">Where it may stand.</param>
/// <param name="Repeats">Whether it may stand there more than once.</param>
internal sealed record PropertyRow(string Keyword, PropertyHolders Holders, bool Repeats = false);
