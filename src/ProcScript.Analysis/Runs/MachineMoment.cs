using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Runs;

/// <summary>A machine between two steps of a strip: what it is like, and what can be done to it.</summary>
public sealed class MachineMoment
{
    private readonly NeedCollector _collector;
    private readonly MachineFacts _facts;

    internal MachineMoment(MachineFacts facts, MachineState state)
    {
        State = state;
        _facts = facts;
        _collector = new NeedCollector(facts, state, NeedsPhase.Strip, ImmutableHashSet<MachineItem>.Empty);
    }

    /// <summary>What it is like.</summary>
    public MachineState State { get; }

    /// <summary>Whether a verb suits an item and all is met that it needs.</summary>
    public bool CanDo(Verb verb, MachineItem item) => ActionTable.Row(verb).Suits(item) && _collector.AllMet(Request(verb, item));

    /// <summary>Whether a verb that suits an item would leave it as it is already.</summary>
    public bool IsDone(Verb verb, MachineItem item) =>
        ActionTable.Row(verb).Suits(item) && (item is Joint joint && State.Attached(joint) == 0 && ActionTable.Row(verb).Phase == ActionPhase.Strip || ActionEffect.On(State, Request(verb, item)) is [var change, ..] && change.Before == change.After);

    /// <summary>What is still missing for a verb that suits an item, in words.</summary>
    public ImmutableArray<string> Missing(Verb verb, MachineItem item) => ActionTable.Row(verb).Suits(item)
        ? [.. _collector.Collect(Request(verb, item)).Where(need => !_collector.IsMet(need)).Select(NeedPhrases.IsNot).Distinct(StringComparer.Ordinal)]
        : [];

    /// <summary>The verb that opens an item, takes it off or switches it.</summary>
    public static Verb Opening(MachineItem item) => ActionTable.Opening(item).Verb;

    /// <summary>The joints that hold a part with all that is in it, as many as are still attached.</summary>
    public IEnumerable<Joint> Holding(Part part) => _facts.Ties(part).Where(joint => State.Attached(joint) > 0);

    /// <summary>What the item is like, in a few words.</summary>
    public string Words(MachineItem item) => item switch
    {
        Joint joint when Value(StateKind.Slack, joint) == 1 && State.Attached(joint) > 0 => $"{State.Attached(joint)} of {joint.Count} attached, slack",
        Joint joint when State.Attached(joint) == 0 => ActionTable.Opening(joint).Done,
        Joint joint => $"{State.Attached(joint)} of {joint.Count} attached",
        Part part => (State.Place(part), Value(StateKind.Propped, part)) switch
        {
            (PartPlace.Out, _) => "out",
            (PartPlace.Aside, _) => "aside",
            (_, 1) => "in place, supported",
            _ => "in place",
        },
        Energy => (EnergyState)Value(StateKind.Live, item) switch
        {
            EnergyState.Live => "live",
            EnergyState.Unproved => "isolated, not proved to be off",
            _ => "isolated",
        },
        Fluid => Value(StateKind.Full, item) == 1 ? "in" : "out",
        Control control => $"at `{control.Positions[Value(StateKind.Position, control)]}`",
        _ => "",
    };

    private int Value(StateKind kind, MachineItem item) => State[new StateVariable(kind, item.Index)];

    private ActionRequest Request(Verb verb, MachineItem item) => Verification.Prepared(
        new ActionRequest(verb, item, item switch
        {
            // Any piece will do, and any other position.
            Joint joint => Math.Max(1, State.Attached(joint)),
            Control control => Value(StateKind.Position, control) == 0 ? Math.Min(1, control.Positions.Length - 1) : 0,
            _ => 0,
        }),
        _collector);
}
