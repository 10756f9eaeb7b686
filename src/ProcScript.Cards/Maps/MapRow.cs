using ProcScript.Analysis.Messages;
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
    public static IEnumerable<MapRow> Of(PlanMap map, Wordbook? book = null)
    {
        var graph = MapGraph.Of(map);
        var hiddenBy = graph.Edges.ToLookup(edge => edge.Behind, edge => graph.Nodes[edge.Front].Title);
        var hides = graph.Edges.ToLookup(edge => edge.Front, edge => graph.Nodes[edge.Behind].Title);
        return graph.Nodes.Select((node, at) => new MapRow(node.Title, node.IsGoal, MoveOf(node, book ?? Wordbook.English), node.Step, [.. hiddenBy[at]], [.. hides[at]]));
    }

    /// <summary>Whether and when a part comes off or goes aside, in words.</summary>
    public static string MoveOf(PlanMapNode node, Wordbook book)
    {
        var move = book.Say(node.Move switch { "off" => "map.off", "aside" => "map.aside", _ => "map.stays" });
        return node.Step > 0 ? book.Say("map.at", ("move", move), ("step", node.Step)) : move;
    }
}
