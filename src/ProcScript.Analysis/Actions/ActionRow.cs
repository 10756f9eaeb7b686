using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Needs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Actions;

/// <summary>Where an action stands in a procedure.</summary>
[Flags]
public enum ActionPhase
{
    /// <summary>In a stage: it takes the machine apart.</summary>
    Strip = 1,

    /// <summary>In the refit: it puts the machine together.</summary>
    Refit = 2,

    /// <summary>In a stage or in the work: it changes nothing that the refit would have to undo.</summary>
    Work = 4,
}

/// <summary>A row of the action table: all there is to know of a verb.</summary>
/// <param name="Verb">The verb.</param>
/// <param name="Phase">Where it stands.</param>
/// <param name="Targets">What it is done to.</param>
/// <param name="Inverse">The verb that undoes it; null where nothing has to.</param>
/// <param name="Done">The word for a target to which it has been done: <c>unplugged</c>.</param>
public sealed record ActionRow(
    Verb Verb,
    ActionPhase Phase,
    ActionTargets Targets,
    Verb? Inverse,
    string Done)
{
    /// <summary>The verb as it is written in a procedure.</summary>
    public string Word { get; } = Verb.ToString().ToLowerInvariant();

    /// <summary>The line of a card, in English, with a target: <c>Undo 4 × M10 × 30 bolt</c>. What packs say stands among the messages.</summary>
    public string Phrase(string target) => Wordbook.English.Say($"verb.{Word}", ("what", target));

    /// <summary>Whether it is done to such an item.</summary>
    /// <param name="item">The item.</param>
    public bool Suits(MachineItem item) => (Targets & ActionTarget.Of(item)) != 0;

    /// <summary>Whether other work may go on meanwhile.</summary>
    public bool MayRunInBackground { get; init; }

    /// <summary>Whether the compiler alone puts it in; no author writes it.</summary>
    public bool IsInserted { get; init; }

    /// <summary>Whether it is done to keep people safe, so that nobody is ever told to leave it.</summary>
    public bool IsPrecaution { get; init; }

    /// <summary>What has to be true: each adds its needs in the state at hand.</summary>
    internal ImmutableArray<Action<ActionRequest, NeedCollector>> Needs { get; init; } = [];

    /// <summary>What it does, what it is about first; nothing where it changes nothing.</summary>
    internal ImmutableArray<ActionEffect> Effects { get; init; } = [];
}
