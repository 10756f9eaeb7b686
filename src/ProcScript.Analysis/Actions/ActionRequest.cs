using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Actions;

/// <summary>An action to be judged and performed.</summary>
/// <param name="Verb">What is done.</param>
/// <param name="Target">What it is done to; null for a measurement, a task, a check, a record or a pause.</param>
/// <param name="Value">Pieces of a joint, the position of a control, the <see cref="States.PartPlace"/> that a part goes back to, or the
/// <see cref="States.EnergyState"/> that an isolation comes to.</param>
internal readonly record struct ActionRequest(Verb Verb, MachineItem? Target, int Value = 0)
{
    /// <summary>Conditions written at the action itself.</summary>
    public ImmutableArray<Condition> Conditions { get; init; } = [];

    /// <summary>What may be open although an energy comes back, for the author says so.</summary>
    public ImmutableArray<MachineItem> Open { get; init; } = [];

    /// <summary>Whether an energy comes back for a test alone.</summary>
    public bool IsForTest { get; init; }

    /// <summary>The test that this is; null for any single action.</summary>
    public TestRule? Test { get; init; }

    /// <summary>Whether it gives the torque to what a rule has go in finger-tight, so that both together fasten the joint.</summary>
    public bool EndsFastening { get; init; }

    /// <summary>The target as a joint.</summary>
    public Joint Joint => (Joint)Target!;

    /// <summary>The target as a part.</summary>
    public Part Part => (Part)Target!;

    /// <summary>Whether a refit rule means it. What goes in finger-tight and gets its torque later is fastened by both.</summary>
    public bool IsNamedBy(RefitAnchor anchor) =>
        Target == anchor.Target
        && (anchor.Position < 0 || anchor.Position == Value)
        && (Verb == anchor.Verb || (anchor.Verb == Verb.Fasten && (Verb == Verb.Snug || EndsFastening)));
}
