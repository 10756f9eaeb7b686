using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Wording;

/// <summary>Needs in words.</summary>
internal static class NeedPhrases
{
    private const string OffOrSlack = "off or slack";

    /// <summary>That the need is met: <c>the roof panel is supported</c>.</summary>
    public static string Is(Need need) => need is AnyOf choice ? Either(choice, Is) : $"{ItemPhrases.The(need.Item)} is {State(need)}";

    /// <summary>That it is not: <c>the roof panel is not supported</c>, <c>neither the seat nor the door is out</c>.</summary>
    public static string IsNot(Need need) => need is AnyOf choice ? Neither(choice) : $"{ItemPhrases.The(need.Item)} is not {State(need)}";

    /// <summary>What is needed: <c>the roof panel supported</c>.</summary>
    public static string Wanted(Need need) => need is AnyOf choice ? Either(choice, Wanted) : $"{ItemPhrases.The(need.Item)} {State(need)}";

    /// <summary>What a condition asks for: <c>the roof panel out of the way</c>.</summary>
    public static string Wanted(Condition condition) => condition.State switch
    {
        NeededState.AnyOf => ItemPhrases.Either(condition.Ways.Select(Wanted)),
        NeededState.Slack => $"{ItemPhrases.The(condition.Item)} {OffOrSlack}",
        _ => Wanted(ClearNeeds.NeedOf(condition)),
    };

    /// <summary>Where a need is written and what it asks for; and for what all it is written, where that is a part around the target.</summary>
    public static LabeledSpan Place(Need need, MachineItem? target) => new(
        need.Declared!.Declared,
        $"needs {Wanted(need)}{(Inherited(need, target) is { } part ? $", as all of {ItemPhrases.The(part)} does" : "")}");

    /// <summary>The part in whose text a need is written, where it binds the target for lying in that part; else null.</summary>
    public static Part? Inherited(Need need, MachineItem? target) =>
        target is not null && need.Declared?.Owner is Part part && part != target ? part : null;

    /// <summary>All the ways of a choice.</summary>
    private static string Either(AnyOf choice, Func<Need, string> words) => ItemPhrases.Either(choice.Ways.Select(words));

    /// <summary>That none of the ways of a choice is open; a state that all share is said once.</summary>
    private static string Neither(AnyOf choice) => choice.Ways.Select(State).Distinct(StringComparer.Ordinal).ToList() is [var shared]
        ? $"neither {string.Join(" nor ", choice.Ways.Select(way => ItemPhrases.The(way.Item)))} is {shared}"
        : $"neither {string.Join(" nor ", choice.Ways.Select(Is))}";

    private static string State(Need need) => need switch
    {
        { Declared.State: NeededState.Slack } => OffOrSlack,
        PartOutOfTheWay => "out of the way",
        PartOut or TemporaryOff => "out",
        PartOnBench => "on the bench",
        PartInPlace => "in place",
        PartFitted => "fitted",
        PartAside => "aside",
        PartPropped { IsPropped: true } => "supported",
        PartPropped => "without a support",
        JointOff or CoverOff => ActionTable.Opening(need.Item).Done,
        JointTight => "tight",
        JointSlack => "slack",
        JointAttached or JointComplete => ActionTable.Closing(need.Item).Done,
        JointMissing => "open",
        JointCapped or HolePlugged { IsPlugged: true } => "capped",
        JointUncapped or HolePlugged => "without caps",
        EnergyLive => "live",
        EnergyIsolated => "isolated",
        EnergyProvedDead => "proved to be off",
        FluidFull => "in",
        FluidEmpty => "out",
        ControlAt at => $"at `{at.Control.Positions[at.Position]}`",
        ControlElsewhere elsewhere => $"away from `{elsewhere.Control.Positions[elsewhere.Position]}`",
        _ => throw new InvalidOperationException($"A need without words: {need}"),
    };
}
