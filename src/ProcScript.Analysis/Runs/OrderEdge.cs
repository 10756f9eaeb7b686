using ProcScript.Analysis.Needs;
using ProcScript.Analysis.States;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs;

/// <summary>One action has to go before another; two of them may say so for two reasons.</summary>
/// <param name="Earlier">The number of the action that goes first.</param>
/// <param name="Later">The number of the action that goes later.</param>
/// <param name="Reason">Why.</param>
public readonly record struct OrderEdge(int Earlier, int Later, OrderReason Reason);

/// <summary>Why one action has to go before another.</summary>
public abstract record OrderReason
{
    private protected OrderReason()
    {
    }
}

/// <summary>The earlier makes true what the later needs.</summary>
/// <param name="Need">What the later needs.</param>
public sealed record Enables(Need Need) : OrderReason;

/// <summary>The later would undo what the earlier needs.</summary>
/// <param name="Need">What the earlier needs.</param>
public sealed record Spoils(Need Need) : OrderReason;

/// <summary>Both change one and the same thing.</summary>
/// <param name="Variable">The thing.</param>
public sealed record SameThing(StateVariable Variable) : OrderReason;

/// <summary>The author says so.</summary>
/// <param name="Rule">The rule.</param>
public sealed record Ruled(RefitRule Rule) : OrderReason;

/// <summary>The later comes right after the earlier in a test.</summary>
public sealed record WithinTest : OrderReason;

/// <summary>The later waits until work in the background on the same thing has ended.</summary>
public sealed record AwaitsWork : OrderReason;
