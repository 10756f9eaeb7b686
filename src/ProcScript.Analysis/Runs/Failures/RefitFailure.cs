using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs.Failures;

/// <summary>A reason why the refit cannot be done or does not put the machine back: the facts; a rule makes a finding of it.</summary>
public abstract record RefitFailure
{
    private protected RefitFailure()
    {
    }
}

/// <summary>A refit rule names an action that the refit has not.</summary>
/// <param name="Anchor">The action as the rule names it.</param>
/// <param name="Why">Why there is none.</param>
public sealed record RuleWithoutAction(RefitAnchor Anchor, NoAction Why) : RefitFailure;

/// <summary>Why the refit has not an action that a rule names.</summary>
public enum NoAction
{
    /// <summary>The strip does nothing of which that would be the inverse.</summary>
    NothingToUndo,

    /// <summary>The verb is not for things of this sort.</summary>
    WrongVerb,

    /// <summary>The item is discarded.</summary>
    Discarded,

    /// <summary>It goes in with its torque at once, since no rule says <c>snug</c>.</summary>
    NotSnug,
}

/// <summary>A refit rule has a verb of the strip.</summary>
/// <param name="Anchor">The action as the rule names it.</param>
public sealed record StripVerbInRule(RefitAnchor Anchor) : RefitFailure;

/// <summary>Actions of the refit wait for each other in a circle that an author's rule closes.</summary>
/// <param name="Edges">The circle, beginning with an author's rule.</param>
public sealed record RuleCircle(ImmutableArray<CircleEdge> Edges) : RefitFailure
{
    /// <summary>Whether a test under power is one of them.</summary>
    public bool IsAboutTest => CircleEdge.LeadThroughTest(Edges);
}

/// <summary>An energy is wanted live while joints on it are still open, or while what guards it is off.</summary>
/// <param name="Energy">The energy.</param>
/// <param name="Open">The joints, and the parts and covers that guard it.</param>
/// <param name="Wanted">The action that needs the energy live, or that a rule puts after its return.</param>
/// <param name="Edges">The circle, beginning with an author's rule where one closes it.</param>
public sealed record PowerBeforeClosing(Energy Energy, ImmutableArray<MachineItem> Open, RefitStep Wanted, ImmutableArray<CircleEdge> Edges)
    : RefitFailure;

/// <summary>Actions of the refit wait for each other in a circle, without any author's rule.</summary>
/// <param name="Edges">The circle.</param>
public sealed record NeedCircle(ImmutableArray<CircleEdge> Edges) : RefitFailure
{
    /// <summary>Whether a test under power is one of them.</summary>
    public bool IsAboutTest => CircleEdge.LeadThroughTest(Edges);
}

/// <summary>One link of a circle.</summary>
/// <param name="Earlier">What has to go first.</param>
/// <param name="Later">What has to go later.</param>
/// <param name="Reason">Why.</param>
public readonly record struct CircleEdge(RefitStep Earlier, RefitStep Later, OrderReason Reason)
{
    /// <summary>Whether a circle leads through a test under power.</summary>
    internal static bool LeadThroughTest(ImmutableArray<CircleEdge> edges) => edges.Any(edge => edge.Earlier.Origin is RuledTest);
}

/// <summary>An action of the refit with where it comes from.</summary>
/// <param name="Action">The action.</param>
/// <param name="Origin">Where it comes from.</param>
public readonly record struct RefitStep(NamedAction Action, ActionOrigin Origin);

/// <summary>A part that must not go back does.</summary>
/// <param name="Part">The part.</param>
/// <param name="Removal">How it came out.</param>
public sealed record SingleUseReturns(Part Part, PerformedAction Removal) : RefitFailure;

/// <summary>Fasteners that serve once are loosened and tightened again.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Loosening">What loosened them.</param>
public sealed record SingleUseTightened(Joint Joint, PerformedAction Loosening) : RefitFailure;

/// <summary>What had to be renewed goes back as it was, or stays as it is.</summary>
/// <param name="Item">The part or the joint.</param>
/// <param name="Disturbance">What disturbed it.</param>
/// <param name="Opening">How it came off; null where it stayed in place, or part of it did.</param>
public sealed record MustBeRenewed(MachineItem Item, PerformedAction Disturbance, PerformedAction? Opening) : RefitFailure;

/// <summary>An action of the refit needs what is never so.</summary>
/// <param name="Step">The action.</param>
/// <param name="Need">The need.</param>
public sealed record NeverMet(RefitStep Step, Need Need) : RefitFailure;

/// <summary>The proof finds an action that cannot be performed where it stands.</summary>
/// <param name="Step">The action.</param>
/// <param name="Need">What it needs.</param>
public sealed record Blocked(RefitStep Step, Need Need) : RefitFailure;

/// <summary>The proof finds that something is not as it was.</summary>
/// <param name="Item">The item.</param>
/// <param name="Variable">What of it.</param>
/// <param name="Before">How it came in.</param>
/// <param name="After">How it goes out.</param>
/// <param name="Opening">The action of the strip that changed it last; null where none did.</param>
public sealed record NotAsBefore(
    MachineItem Item,
    StateVariable Variable,
    int Before,
    int After,
    PerformedAction? Opening) : RefitFailure;
