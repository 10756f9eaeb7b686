using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Wording;

/// <summary>Items and actions as findings speak of them: parts by their titles, joints by their names.</summary>
internal static class ItemPhrases
{
    private const int MostListed = 4;

    /// <summary>The item as the subject of a sentence: <c>the headliner</c>, <c>`dome_plug`</c>.</summary>
    public static string The(MachineItem item) => item is Joint ? $"`{item.Name}`" : $"the {item.Title}";

    /// <summary>The joint with its pieces: <c>1 × 2-way connector `dome_plug`</c>.</summary>
    public static string Pieces(Joint joint, int count) => $"{count} × {joint.Kind.Title} `{joint.Name}`";

    /// <summary>Says that a joint still holds: <c>1 × 2-way connector `dome_plug` is still plugged</c>.</summary>
    public static string Still(HeldJoint held) =>
        $"{Pieces(held.Joint, held.Attached)} {(held.Attached == 1 ? "is" : "are")} still {ActionTable.Closing(held.Joint).Done}";

    /// <summary>The action as it is written: <c>`unplug dome_plug`</c>; a check by its text.</summary>
    public static string Written(NamedAction action) => $"`{Words(action)}`";

    /// <summary>The action that a refit rule names, as it is written: <c>`set lever to up`</c>.</summary>
    public static string Written(RefitAnchor anchor) => anchor is { Position: >= 0, Target: Control control }
        ? $"`{Words(new NamedAction(anchor.Verb, control))} to {control.Positions[anchor.Position]}`"
        : Written(new NamedAction(anchor.Verb, anchor.Target));

    /// <summary>The same for a step of the refit; a check and a test by their texts.</summary>
    public static string Written(RefitStep step) => step.Origin switch
    {
        RuledCheck { Rule: { Verb: var verb, Text: var text } } => $"the {ActionTable.Row(verb).Word} \"{text}\"",
        RuledTest { Rule.Title: var title } => $"the test \"{title}\"",
        TestStep { Rule.Title: var title } => $"the test \"{title}\"",
        _ => Written(step.Action),
    };

    /// <summary>The action as it is written, without marks.</summary>
    public static string Words(NamedAction action) =>
        action.Target is { } target ? $"{ActionTable.Row(action.Verb).Word} {target.Name}" : ActionTable.Row(action.Verb).Word;

    /// <summary>What is done with a target by a step: <c>`seat_bolts` is undone</c>; a text action by its verb.</summary>
    public static string Doing(Verb verb, MachineItem? target) => target switch
    {
        null when verb == Verb.Measure => "the measurement is taken",
        null when verb == Verb.Task => "the task is done",
        null when verb == Verb.Record => "the record is written",
        null when verb == Verb.Pause => "the job stops",
        null => "the check is made",
        Part when verb == Verb.Aside => $"{The(target)} goes aside",
        Fluid when verb == Verb.Empty => $"{The(target)} is emptied",
        Joint when verb == Verb.Loosen => $"{The(target)} is loosened",
        _ => $"{The(target)} is {ActionTable.Row(verb).Done}",
    };

    /// <summary>The action as somebody is told to do it: <c>unplug `dome_plug`</c>, <c>isolate the 12 V battery</c>.</summary>
    public static string Cue(NamedAction action) => $"{ActionTable.Row(action.Verb).Word} {The(action.Target!)}";

    /// <summary>A choice: <c>a, b or c</c>.</summary>
    public static string Either(IEnumerable<string> items)
    {
        var all = items.ToList();
        return all.Count < 2 ? string.Concat(all) : $"{string.Join(", ", all.SkipLast(1))} or {all[^1]}";
    }

    /// <summary>A list: <c>a, b and c</c>; what goes beyond a few may be folded away.</summary>
    public static string List(IEnumerable<string> items) => FoldedList.Of([.. items], MostListed);
}
