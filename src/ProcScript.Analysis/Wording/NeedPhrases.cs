using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Wording;

/// <summary>Needs in words.</summary>
internal static class NeedPhrases
{
    private const string OffOrSlack = "off or slack";

    /// <summary>That the need is met: <c>the roof panel is supported</c>.</summary>
    public static string Is(Need need) => $"{ItemPhrases.The(need.Item)} is {State(need)}";

    /// <summary>That it is not: <c>the roof panel is not supported</c>.</summary>
    public static string IsNot(Need need) => $"{ItemPhrases.The(need.Item)} is not {State(need)}";

    /// <summary>What is needed: <c>the roof panel supported</c>.</summary>
    public static string Wanted(Need need) => $"{ItemPhrases.The(need.Item)} {State(need)}";

    /// <summary>What a condition asks for: <c>the roof panel out of the way</c>.</summary>
    public static string Wanted(Condition condition) => condition.State == NeededState.Slack
        ? $"{ItemPhrases.The(condition.Item)} {OffOrSlack}"
        : Wanted(ClearNeeds.NeedOf(condition));

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
