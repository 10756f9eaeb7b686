using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using static ProcScript.Analysis.Actions.ActionPhase;
using static ProcScript.Analysis.Actions.ActionTargets;

namespace ProcScript.Analysis.Actions;

/// <summary>
/// The action table: what each verb is done to, what it needs, what it does and what undoes it. Strip check, expansion, refit,
/// proof and wording all read this table and know nothing of a single verb besides. A new verb is one row.
/// </summary>
public static class ActionTable
{
    /// <summary>What every hand at a joint needs, whether it opens or closes.</summary>
    private static readonly ImmutableArray<Action<ActionRequest, NeedCollector>> AtAJoint =
        [ClearNeeds.Reached, JointSources.Uncovered, JointSources.Powerless, JointSources.Drained];

    /// <summary>What work on something needs that may be in the machine.</summary>
    private static readonly ImmutableArray<Action<ActionRequest, NeedCollector>> AtWork = [WorkSources.OffOrReached, WorkSources.Harmless];

    /// <summary>The rows, strip verbs first, then their inverses, then work.</summary>
    public static ImmutableArray<ActionRow> Rows { get; } =
    [
        new(Verb.Undo, Strip, Fastener, Verb.Fasten, "undone")
        {
            Needs = [.. AtAJoint, JointSources.Attached],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached - pieces)],
        },
        new(Verb.Loosen, Strip, Fastener, Verb.Tighten, "slack")
        {
            Needs = [.. AtAJoint, JointSources.Attached, JointSources.Tight],
            Effects = [new(StateKind.Slack, (_, _) => 1)],
        },
        new(Verb.Release, Strip, Clip | Cover, Verb.Engage, "released")
        {
            Needs = [.. AtAJoint, JointSources.Attached],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached - pieces)],
        },
        new(Verb.Unplug, Strip, Connector, Verb.Plug, "unplugged")
        {
            Needs = [.. AtAJoint, JointSources.Attached],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached - pieces)],
        },
        new(Verb.Disconnect, Strip, Line, Verb.Connect, "disconnected")
        {
            Needs = [.. AtAJoint, JointSources.Attached],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached - pieces)],
        },
        new(Verb.Cut, Strip, Bond, Verb.Renew, "cut")
        {
            Needs = [.. AtAJoint, JointSources.Attached],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached - pieces)],
        },
        new(Verb.Aside, Strip, ActionTargets.Part, Verb.Return, "aside")
        {
            Needs = [ClearNeeds.Reached, ClearNeeds.OnItsWay, PartSources.Fitted, PartSources.FreeToGoAside],
            Effects = [new(StateKind.Place, (_, _) => (int)PartPlace.Aside)],
        },
        new(Verb.Remove, Strip, ActionTargets.Part, Verb.Fit, "removed")
        {
            Needs = [ClearNeeds.Reached, ClearNeeds.OnItsWay, PartSources.InPlace, PartSources.Untied, PartSources.OnItsPropOrNot],
            Effects =
            [
                new(StateKind.Place, (_, _) => (int)PartPlace.Out),
                // What bore it stays behind.
                new(StateKind.Propped, (_, _) => 0) { IsByTheWay = true },
            ],
        },
        new(Verb.Set, Strip | Refit, ActionTargets.Control, Verb.Set, "set")
        {
            Needs = [ClearNeeds.Reached, ServiceSources.Elsewhere],
            Effects = [new(StateKind.Position, (_, position) => position)],
        },
        new(Verb.Isolate, Strip, ActionTargets.Energy, Verb.Restore, "isolated")
        {
            Needs = [ClearNeeds.Reached, ServiceSources.Live, Verification.ReachedWhereItEndsWithIt],
            Effects = [new(StateKind.Live, (_, proof) => proof)],
            IsPrecaution = true,
        },
        new(Verb.Verify, Strip, ActionTargets.Energy, null, "proved to be off")
        {
            Needs = [Verification.Reached, ServiceSources.Isolated],
            Effects = [new(StateKind.Live, (_, _) => (int)EnergyState.Dead)],
            IsPrecaution = true,
        },
        new(Verb.Empty, Strip, ActionTargets.Fluid, Verb.Fill, "empty")
        {
            Needs = [ClearNeeds.Reached, ServiceSources.Full],
            Effects = [new(StateKind.Full, (_, _) => 0)],
            IsPrecaution = true,
            MayRunInBackground = true,
        },
        new(Verb.Support, Strip | Refit, ActionTargets.Part, Verb.Unsupport, "supported")
        {
            Needs = [PartSources.Unpropped],
            Effects = [new(StateKind.Propped, (_, _) => 1)],
            IsPrecaution = true,
        },

        new(Verb.Cap, Strip, ActionTargets.Joint | ActionTargets.Part, Verb.Uncap, "capped")
        {
            Needs = [CapNeeds.Open],
            Effects =
            [
                new(StateKind.Capped, (capped, pieces) => capped + pieces) { Of = ActionTargets.Joint },
                new(StateKind.Plugged, (_, _) => 1) { Of = ActionTargets.Part },
            ],
            IsInserted = true,
        },

        new(Verb.Fasten, Refit, Fastener, Verb.Undo, "fastened")
        {
            Needs = [.. AtAJoint, JointSources.EndsMeet, JointSources.Missing, CapNeeds.Uncapped],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached + pieces)],
        },
        new(Verb.Snug, Refit, Fastener, null, "finger-tight")
        {
            Needs = [.. AtAJoint, JointSources.EndsMeet, JointSources.Missing],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached + pieces), new(StateKind.Slack, (_, _) => 1)],
        },
        new(Verb.Tighten, Refit, Fastener, Verb.Loosen, "tight")
        {
            Needs = [.. AtAJoint, JointSources.EndsMeet, JointSources.Attached, JointSources.Slack],
            Effects = [new(StateKind.Slack, (_, _) => 0)],
        },
        new(Verb.Engage, Refit, Clip | Cover, Verb.Release, "engaged")
        {
            Needs = [.. AtAJoint, JointSources.EndsMeet, JointSources.OverAWholeJoint, JointSources.Missing, CapNeeds.Uncapped],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached + pieces)],
        },
        new(Verb.Plug, Refit, Connector, Verb.Unplug, "plugged")
        {
            Needs = [.. AtAJoint, JointSources.EndsMeet, JointSources.Missing, CapNeeds.Uncapped],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached + pieces)],
        },
        new(Verb.Connect, Refit, Line, Verb.Disconnect, "connected")
        {
            Needs = [.. AtAJoint, JointSources.EndsMeet, JointSources.Missing, CapNeeds.Uncapped],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached + pieces)],
        },
        new(Verb.Renew, Refit, Bond, Verb.Cut, "in place")
        {
            Needs = [.. AtAJoint, JointSources.EndsMeet, JointSources.OverAWholeJoint, JointSources.Missing, CapNeeds.Uncapped],
            Effects = [new(StateKind.Attached, (attached, pieces) => attached + pieces)],
        },
        new(Verb.Return, Refit, ActionTargets.Part, Verb.Aside, "back")
        {
            Needs = [ClearNeeds.Reached, ClearNeeds.OnItsWay, PartSources.Aside, PartSources.FreeToGoAside],
            Effects = [new(StateKind.Place, (_, place) => place)],
        },
        new(Verb.Fit, Refit, ActionTargets.Part, Verb.Remove, "fitted")
        {
            Needs = [ClearNeeds.Reached, ClearNeeds.OnItsWay, PartSources.Out, CapNeeds.Uncapped],
            Effects = [new(StateKind.Place, (_, place) => place)],
        },
        new(Verb.Restore, Refit, ActionTargets.Energy, null, "live")
        {
            Needs = [ClearNeeds.Reached, ServiceSources.Isolated, PowerNeeds.AllOnItClosed, PowerNeeds.AllThatGuardsItInPlace],
            Effects = [new(StateKind.Live, (_, _) => (int)EnergyState.Live)],
        },
        new(Verb.Fill, Refit, ActionTargets.Fluid, null, "full")
        {
            Needs = [ClearNeeds.Reached, ServiceSources.Empty, ServiceSources.AllThatCarryItClosed],
            Effects = [new(StateKind.Full, (_, _) => 1)],
        },
        new(Verb.Unsupport, Refit, ActionTargets.Part, Verb.Support, "unsupported")
        {
            Needs = [PartSources.Propped, PartSources.Held],
            Effects = [new(StateKind.Propped, (_, _) => 0)],
        },
        new(Verb.Retorque, Refit, Fastener, null, "retorqued")
        {
            Needs = [ClearNeeds.Reached, JointSources.Uncovered, WorkSources.Harmless, JointSources.TightAlready],
        },

        new(Verb.Uncap, Refit, ActionTargets.Joint | ActionTargets.Part, null, "uncapped")
        {
            Needs = [CapNeeds.Capped],
            Effects =
            [
                new(StateKind.Capped, (capped, pieces) => capped - pieces) { Of = ActionTargets.Joint },
                new(StateKind.Plugged, (_, _) => 0) { Of = ActionTargets.Part },
            ],
            IsInserted = true,
        },

        new(Verb.Strip, Strip, ActionTargets.Part, null, "stripped"),

        new(Verb.Replace, Work, ActionTargets.Joint | ActionTargets.Part, null, "replaced") { Needs = [WorkSources.Off, WorkSources.WithoutTemporary] },
        new(Verb.Repair, Work, Anything, null, "repaired") { Needs = AtWork, MayRunInBackground = true },
        new(Verb.Clean, Work, Anything, null, "cleaned") { Needs = AtWork, MayRunInBackground = true },
        new(Verb.Inspect, Work, Anything, null, "inspected") { Needs = AtWork },
        new(Verb.Adjust, Work, Anything, null, "adjusted") { Needs = AtWork },
        new(Verb.Measure, Work, None, null, "measured") { MayRunInBackground = true },
        new(Verb.Task, Work, None, null, "done") { MayRunInBackground = true },
        new(Verb.Check, Work | Refit, None, null, "checked") { MayRunInBackground = true },
        new(Verb.Record, Work | Refit, None, null, "written down"),
        new(Verb.Pause, Work | Refit, None, null, "stopped at"),
        new(Verb.Discard, Work, ActionTargets.Joint | ActionTargets.Part, null, "discarded") { Needs = [WorkSources.Off, WorkSources.WithoutTemporary] },
    ];

    private static readonly Dictionary<ActionTargets, ActionRow> OpeningByTarget = Enum.GetValues<ActionTargets>()
        .Where(target => target != None)
        .ToDictionary(target => target, target => target == ActionTargets.Part
            ? Rows.Single(row => row.Verb == Verb.Remove)
            : Rows.First(row => row.Phase.HasFlag(Strip) && (row.Targets & target) != 0));

    private static readonly ActionRow[] ByVerb = [.. Enum.GetValues<Verb>().Select(verb => Rows.Single(row => row.Verb == verb))];

    /// <summary>The row of a verb.</summary>
    public static ActionRow Row(Verb verb) => ByVerb[(int)verb];

    /// <summary>The strip verb that takes an item off the machine, or puts an energy, a fluid or a control into another state.</summary>
    internal static ActionRow Opening(MachineItem item) => OpeningByTarget[ActionTarget.Of(item)];

    /// <summary>The refit verb that undoes <see cref="Opening"/>.</summary>
    internal static ActionRow Closing(MachineItem item) => Row(Opening(item).Inverse!.Value);

    /// <summary><see cref="Opening"/> with its target.</summary>
    internal static NamedAction OpeningOf(MachineItem item) => new(Opening(item).Verb, item);
}
