using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>A refit action that a rule names.</summary>
/// <param name="Verb">The refit verb.</param>
/// <param name="Target">Its target.</param>
/// <param name="Source">Where it is written.</param>
public sealed record RefitAnchor(Verb Verb, MachineItem Target, SourceSpan Source)
{
    /// <summary>Of a control, the position that is set, an index into <see cref="Control.Positions"/>; -1 where any is meant.</summary>
    public int Position { get; init; } = -1;
}

/// <summary>A line of a <c>refit</c> block.</summary>
/// <param name="Source">Where it is written.</param>
public abstract record RefitRule(SourceSpan Source)
{
    /// <summary>The calls (<c>do</c>) that brought the rule here, outermost first.</summary>
    public ImmutableArray<SourceSpan> Calls { get; init; } = [];
}

/// <summary><c>fit a before fit b</c> (<c>after</c> is turned round).</summary>
/// <param name="Earlier">What goes first.</param>
/// <param name="Later">What goes later.</param>
/// <param name="Source">Where it is written.</param>
public sealed record OrderRule(RefitAnchor Earlier, RefitAnchor Later, SourceSpan Source) : RefitRule(Source);

/// <summary><c>snug a, b</c>: these go in finger-tight, all of them, and get their torque later.</summary>
/// <param name="Joints">Each with the verb <see cref="Verb.Snug"/>.</param>
/// <param name="Source">Where it is written.</param>
public sealed record SnugRule(ImmutableArray<RefitAnchor> Joints, SourceSpan Source) : RefitRule(Source);

/// <summary><c>retorque a after "50 km"</c>: the torque once more, when the job is over.</summary>
/// <param name="Target">The joint, with the verb <see cref="Verb.Retorque"/>.</param>
/// <param name="When">When it is due.</param>
/// <param name="Source">Where it is written.</param>
public sealed record FollowUpRule(RefitAnchor Target, string When, SourceSpan Source) : RefitRule(Source);

/// <summary>Something that the refit does at a place of its own.</summary>
/// <param name="Before">The action that comes after it.</param>
/// <param name="After">The action that comes before it.</param>
/// <param name="Alerts">The alerts right before it.</param>
/// <param name="Source">Where it is written.</param>
public abstract record PlacedRule(RefitAnchor? Before, RefitAnchor? After, ImmutableArray<Alert> Alerts, SourceSpan Source) : RefitRule(Source);

/// <summary>A check, a record or a pause within the refit.</summary>
/// <param name="Verb">Which.</param>
/// <param name="Text">What is checked or written down, or why the job stops.</param>
/// <param name="Expect">What the reading must be.</param>
/// <param name="Conditions">What must be true.</param>
/// <param name="Before">The action that comes after it.</param>
/// <param name="After">The action that comes before it.</param>
/// <param name="Alerts">The alerts right before it.</param>
/// <param name="Source">Where it is written.</param>
public sealed record CheckRule(
    Verb Verb,
    string Text,
    Limit? Expect,
    ImmutableArray<Condition> Conditions,
    RefitAnchor? Before,
    RefitAnchor? After,
    ImmutableArray<Alert> Alerts,
    SourceSpan Source) : PlacedRule(Before, After, Alerts, Source)
{
    /// <summary>What it is done with, and what its block says.</summary>
    public ActionDetails Details { get; init; } = ActionDetails.None;
}

/// <summary><c>retorque j needs e live</c>: the torque once more, within the refit.</summary>
/// <param name="Target">The joint, with the verb <see cref="Verb.Retorque"/>.</param>
/// <param name="Conditions">What must be true.</param>
/// <param name="Before">The action that comes after it.</param>
/// <param name="After">The action that comes before it.</param>
/// <param name="Alerts">The alerts right before it.</param>
/// <param name="Source">Where it is written.</param>
public sealed record RetorqueRule(
    RefitAnchor Target,
    ImmutableArray<Condition> Conditions,
    RefitAnchor? Before,
    RefitAnchor? After,
    ImmutableArray<Alert> Alerts,
    SourceSpan Source) : PlacedRule(Before, After, Alerts, Source);

/// <summary><c>restore e while j open because "…"</c>: an energy may come back although something is still open.</summary>
/// <param name="Action">The action.</param>
/// <param name="Open">What may be open.</param>
/// <param name="Source">Where it is written.</param>
public sealed record OpenRule(RefitAnchor Action, ImmutableArray<OpenItem> Open, SourceSpan Source) : RefitRule(Source);

/// <summary>Something that may be open although an energy is live.</summary>
/// <param name="Item">The item.</param>
/// <param name="Because">Why.</param>
/// <param name="Source">Where it is named.</param>
public sealed record OpenItem(MachineItem Item, string Because, SourceSpan Source);

/// <summary>A test under power before the machine is whole: energies come back, steps are done, the energies are isolated again.</summary>
/// <param name="Title">What it is called.</param>
/// <param name="Powered">The energies that are live meanwhile.</param>
/// <param name="Steps">What is done: checks, measurements and tasks.</param>
/// <param name="Open">What may be open meanwhile.</param>
/// <param name="Before">The action that comes after it.</param>
/// <param name="After">The action that comes before it.</param>
/// <param name="Alerts">The alerts right before it.</param>
/// <param name="Source">Where it is written.</param>
public sealed record TestRule(
    string Title,
    ImmutableArray<Energy> Powered,
    ImmutableArray<Step> Steps,
    ImmutableArray<OpenItem> Open,
    RefitAnchor? Before,
    RefitAnchor? After,
    ImmutableArray<Alert> Alerts,
    SourceSpan Source) : PlacedRule(Before, After, Alerts, Source)
{
    /// <summary>The energies in the order in which they come back: one that asks for another isolated comes back before it.</summary>
    public ImmutableArray<Energy> InOrderOfReturn() => Ordered(Powered, (energy, other) => Asks(energy, other, NeedsPhase.Strip));

    /// <summary>The energies in the order in which they are isolated again: one that asks for another isolated goes after it.</summary>
    public ImmutableArray<Energy> InOrderOfIsolation() => Ordered(Powered.Reverse(), (energy, other) => Asks(other, energy, NeedsPhase.Refit));

    private static bool Asks(Energy energy, Energy other, NeedsPhase notIn) => energy.Conditions.SelectMany(condition => condition.Each).Any(condition =>
        condition.Item == other && condition.State == NeededState.Isolated && condition.Phase != notIn);

    /// <summary>The energies, each before those that it goes before; of those that are free the first in the list.</summary>
    private static ImmutableArray<Energy> Ordered(IEnumerable<Energy> energies, Func<Energy, Energy, bool> goesBefore)
    {
        var left = energies.ToList();
        var ordered = ImmutableArray.CreateBuilder<Energy>(left.Count);
        while (left.Count > 0)
        {
            // Energies that wait for each other in a circle are a finding of the machine; any order does for them.
            var next = left.Find(energy => !left.Exists(other => other != energy && goesBefore(other, energy))) ?? left[0];
            left.Remove(next);
            ordered.Add(next);
        }

        return ordered.DrainToImmutable();
    }
}
