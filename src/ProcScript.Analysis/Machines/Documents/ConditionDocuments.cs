using System.Collections.Immutable;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Machines.Documents;

/// <summary>Conditions as data.</summary>
internal static class ConditionDocuments
{
    /// <summary>The conditions, in order.</summary>
    public static ImmutableArray<ConditionDocument> Of(ImmutableArray<Condition> conditions) => [.. conditions.Select(Of)];

    private static ConditionDocument Of(Condition condition) => new(condition.Phase.ToString().ToLowerInvariant(), [.. condition.Each.Select(State)]);

    private static StateDocument State(Condition condition) => new(
        condition.Item.Name,
        Word(condition.State),
        condition is { State: NeededState.Position, Item: Control control } ? control.Positions[condition.Position] : "");

    private static string Word(NeededState state) => state switch
    {
        NeededState.OutOfTheWay => "away",
        NeededState.Position => "at",
        _ => state.ToString().ToLowerInvariant(),
    };
}
