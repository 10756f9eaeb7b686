using System.Globalization;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Maps;

/// <summary>The map in words, a row a part.</summary>
/// <param name="Title">What people call the part.</param>
/// <param name="IsGoal">Whether a goal names it.</param>
/// <param name="Move">Whether and when it comes off or goes aside.</param>
/// <param name="Step">The step at which it does; 0 where none does.</param>
/// <param name="HiddenBy">The parts that hide it.</param>
/// <param name="Hides">The parts that it hides.</param>
internal sealed record MapRow(string Title, bool IsGoal, string Move, int Step, IReadOnlyList<string> HiddenBy, IReadOnlyList<string> Hides)
{
    /// <summary>The rows in the order of coming off.</summary>
    public static IEnumerable<MapRow> Of(PlanMap map)
    {
        var graph = MapGraph.Of(map);
        var hiddenBy = graph.Edges.ToLookup(edge => edge.Behind, edge => graph.Nodes[edge.Front].Title);
        var hides = graph.Edges.ToLookup(edge => edge.Front, edge => graph.Nodes[edge.Behind].Title);
        return graph.Nodes.Select((node, at) => new MapRow(node.Title, node.IsGoal, MoveOf(node), node.Step, [.. hiddenBy[at]], [.. hides[at]]));
    }

    /// <summary>Whether and when a part comes off or goes aside, in words.</summary>
    public static string MoveOf(PlanMapNode node)
    {
        var move = node.Move is "off" or "aside" ? node.Move : "stays";
        return node.Step > 0 ? string.Create(CultureInfo.InvariantCulture, $"{move} at step {node.Step}") : move;
    }
}
