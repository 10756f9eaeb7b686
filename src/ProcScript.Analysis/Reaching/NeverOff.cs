using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching.Search;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Reaching;

/// <summary>Says why something can never be reached: what waits for what, as far as the circle that closes, or what nothing brings about.</summary>
internal static class NeverOff
{
    /// <summary>The reason, as a sentence in lower case.</summary>
    public static string Because(MachineFacts facts, ReachGraph graph, ClosureProblem problem)
    {
        var clauses = new FreeingClauses(facts) { InFull = true };
        var rounds = problem.Rounds(_ => true);
        var at = problem.Goals.First(goal => rounds[goal] < 0 || problem.Along[goal].Any(other => rounds[other] < 0));
        var asked = graph[at].Item;
        var chain = new List<string>();
        var seen = new Dictionary<int, int>();
        while (seen.TryAdd(at, chain.Count))
        {
            var lacking = problem.Clauses[at].Index().FirstOrDefault(clause => clause.Item.All(way => rounds[way] < 0), (-1, []));
            if (lacking.Index < 0)
            {
                // What has to be renewed along with it, and cannot.
                if (problem.Along[at].FirstOrDefault(other => rounds[other] < 0, -1) is not (>= 0 and var along))
                {
                    break;
                }

                chain.Add($"with {ItemPhrases.The(graph[at].Item)} off, {ItemPhrases.The(graph[along].Item)} has to be renewed");
                at = along;
                continue;
            }

            var clause = clauses.Of(graph[at]) is { } all && lacking.Index < all.Count ? all[lacking.Index] : null;
            if (graph[at].Kind != FreeingKind.Renewed)
            {
                chain.Add($"{ItemPhrases.The(graph[at].Item)} needs {Wanted(clause, graph, lacking.Item)}");
            }

            if (lacking.Item is not [var next, ..])
            {
                break;
            }

            at = next;
        }

        var circle = seen.TryGetValue(at, out var start) && start < chain.Count ? chain.Skip(start).ToList() : [];
        return $"{ItemPhrases.The(asked)} can never be reached: {string.Join(", ", chain)}"
            + (circle.Count > 0 ? $", and so round again from {ItemPhrases.The(graph[at].Item)}" : ", which nothing on the machine brings about")
            + ". Say with 'aside' how something moves out of the way, or take a condition out.";
    }

    private static string Wanted(FreeingClause? clause, ReachGraph graph, int[] ways) => clause switch
    {
        { Condition: { } condition } => NeedPhrases.Wanted(condition),
        _ when ways is [var way, ..] => graph[way] switch
        {
            { Kind: FreeingKind.Off, Item: Joint joint } => $"{ItemPhrases.The(joint)} {Actions.ActionTable.Opening(joint).Done}",
            { Kind: FreeingKind.Out, Item: var item } => $"{ItemPhrases.The(item)} out",
            var other => $"{ItemPhrases.The(other.Item)} out of the way",
        },
        _ => "what can never be had",
    };
}
