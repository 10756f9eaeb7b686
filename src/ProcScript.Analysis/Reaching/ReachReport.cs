using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Reaching;

/// <summary>How something is reached: the answer that every face renders. Times are in seconds.</summary>
public sealed record ReachReport
{
    /// <summary>The version of this document's form.</summary>
    public string Format { get; init; } = "1";

    /// <summary>The name of the machine.</summary>
    public required string Machine { get; init; }

    /// <summary>What people call the machine.</summary>
    public required string MachineTitle { get; init; }

    /// <summary>The options that it has in this answer.</summary>
    public required ImmutableArray<string> With { get; init; }

    /// <summary>What was asked for.</summary>
    public required ImmutableArray<ReachedItem> Items { get; init; }

    /// <summary>What for: <c>remove</c>, <c>inspect</c> or <c>replace</c>.</summary>
    public required string Purpose { get; init; }

    /// <summary>What the way costs: its steps there and back, in seconds, with the weights.</summary>
    public required double Cost { get; init; }

    /// <summary>What any way costs at the least.</summary>
    public required double Bound { get; init; }

    /// <summary>Whether no way is cheaper, as far as the machine is described.</summary>
    public required bool IsCheapest { get; init; }

    /// <summary>How many choices were looked at.</summary>
    public required int Looked { get; init; }

    /// <summary>Why each action of the strip and the work is needed.</summary>
    public required ImmutableArray<ReachedAction> Actions { get; init; }

    /// <summary>The next best ways, the cheapest first.</summary>
    public required ImmutableArray<OtherWay> OtherWays { get; init; }

    /// <summary>The whole job as a work pack has it: steps with alerts, tools, people and new parts, the refit, the lists and the times.</summary>
    public required Plan Plan { get; init; }

    /// <summary>The procedure as a source.</summary>
    public required string Draft { get; init; }

    /// <summary>The files that it names things of, the machine's first.</summary>
    public required ImmutableArray<string> Uses { get; init; }

    /// <summary>The chain of reasons of an action, itself first and what was asked for last.</summary>
    public IEnumerable<ReachedAction> ChainOf(ReachedAction action)
    {
        ArgumentNullException.ThrowIfNull(action);
        var seen = new HashSet<int>();
        for (var at = action; at is not null && seen.Add(at.Step); at = Actions.FirstOrDefault(other => other.Step == at.For))
        {
            yield return at;
        }
    }
}

/// <summary>Something that was asked for.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">What people call it.</param>
public sealed record ReachedItem(string Name, string Title);

/// <summary>An action and why it is needed.</summary>
/// <param name="Step">The number of its step in the plan.</param>
/// <param name="Verb">The verb's word in the language.</param>
/// <param name="Item">The item's name.</param>
/// <param name="Text">What is done, in words.</param>
/// <param name="For">The step that needs it; 0 for what was asked for.</param>
/// <param name="Because">Why that needs it.</param>
public sealed record ReachedAction(int Step, string Verb, string Item, string Text, int For, string Because);

/// <summary>A way that is not the cheapest.</summary>
/// <param name="More">What it costs more, in seconds, with the weights.</param>
/// <param name="Instead">What it does and the cheapest does not.</param>
/// <param name="Without">What the cheapest does and it does not.</param>
public sealed record OtherWay(double More, ImmutableArray<OtherAction> Instead, ImmutableArray<OtherAction> Without);

/// <summary>What one way does and another does not.</summary>
/// <param name="Text">What, in words.</param>
/// <param name="Cost">What it costs there and back, in seconds, with the weights.</param>
public sealed record OtherAction(string Text, double Cost);
