using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Proving;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Refitting;

/// <summary>
/// Derives the refit of a sound strip: the order closest to the exact reverse that keeps every causal link and every rule of the
/// author. Whether it works is for the proof to say, which performs it without knowing how it was found.
/// </summary>
internal sealed class RefitDerivation
{
    private readonly MachineFacts _facts;
    private readonly StripRun _strip;
    private readonly ReferenceRefit _reference;
    private readonly CausalLinks _links;
    private readonly RuleEdges _rules;

    private RefitDerivation(MachineFacts facts, StripRun strip, bool asInTheMachine)
    {
        _facts = facts;
        _strip = strip;
        _reference = ReferenceRefit.Of(facts, strip, new InverseList(strip), asInTheMachine);
        _links = new CausalLinks(facts.Layout, strip.End, _reference.Drafts);
        _rules = new RuleEdges(strip, _reference.Drafts);
    }

    /// <summary>Derives the refit of <paramref name="strip"/> and performs it.</summary>
    public static RefitAttempt Attempt(MachineFacts facts, StripRun strip)
    {
        var attempt = new RefitDerivation(facts, strip, asInTheMachine: false).Attempt();
        if (attempt.Run is null
            && new RefitDerivation(facts, strip, asInTheMachine: true).Attempt() is { Run: not null } second)
        {
            return second;
        }

        return attempt;
    }

    private RefitAttempt Attempt()
    {
        List<RefitFailure> failures = [.. SingleUse(), .. _rules.Failures, .. NeverMet()];
        var edges = _rules.Edges.Concat(_links.Edges).ToList();
        var graph = PrecedenceGraph.Of(_reference.Drafts.Count, edges);
        if (graph.LeastOrder() is not { } order)
        {
            failures.Add(new CircleReport(_facts, _reference.Drafts, graph).Describe());
            return new RefitAttempt(_strip, null, [.. failures]);
        }

        // Who leads another keeps close to it, as long as that closes no circle.
        var together = PrecedenceGraph.Of(_reference.Drafts.Count, edges.Concat(KeepTogether(edges)));
        var run = Number(together.LeastOrder() ?? order, edges);
        if (failures.Count == 0)
        {
            failures.AddRange(RefitProof.Failures(_facts, _strip, run.Actions));
        }

        return new RefitAttempt(_strip, run, [.. failures]);
    }

    private IEnumerable<RefitFailure> SingleUse() =>
        from action in _strip.Actions
        where action.Verb == Verb.Remove
        let part = (Part)action.Target!
        where part.SingleUse && !_strip.Discarded.Contains(part) && !_strip.Replaced.Contains(part)
        select new SingleUseReturns(part, action);

    private IEnumerable<RefitFailure> NeverMet() =>
        _links.Unmet.Select(unmet => new NeverMet(CircleReport.Name(_reference.Drafts[unmet.Action]), unmet.Need));

    /// <summary>A leader waits for all that the action waits for that it leads.</summary>
    private IEnumerable<OrderEdge> KeepTogether(List<OrderEdge> edges)
    {
        if (_reference.Leaders.Count == 0)
        {
            return [];
        }

        var before = edges.ToLookup(edge => edge.Later);
        var ledBy = _reference.Leaders.ToLookup(leader => leader.Led, leader => leader.Index);
        return from leader in _reference.Leaders
               from edge in before[leader.Led]
               where edge.Earlier != leader.Index && !ledBy[leader.Led].Contains(edge.Earlier)
               select edge with { Later = leader.Index };
    }

    private RefitRun Number(IReadOnlyList<int> order, List<OrderEdge> edges)
    {
        var numbering = _strip.Numbering.Copy();
        var first = numbering.Next;
        var numberOf = new int[order.Count];
        for (var i = 0; i < order.Count; i++)
        {
            numberOf[order[i]] = first + i;
        }

        var before = edges.ToLookup(edge => edge.Later);
        var lastInStrip = new Dictionary<StateVariable, int>();
        foreach (var action in _strip.Actions)
        {
            foreach (var change in action.Changes)
            {
                lastInStrip[change.Variable] = action.Number;
            }
        }

        foreach (var index in order)
        {
            var draft = _reference.Drafts[index];
            var metBy = draft.Needs.Select((need, i) =>
                _links.MetBy[index][i] is >= 0 and var by ? numberOf[by] : lastInStrip.GetValueOrDefault(need.Variable, -1));
            var incoming = before[index].Select(edge => new OrderEdge(numberOf[edge.Earlier], numberOf[index], edge.Reason));
            numbering.Add(draft, [.. metBy], [.. incoming]);
        }

        return new RefitRun { Actions = numbering.ActionsFrom(first), Order = numbering.EdgesFrom(first) };
    }
}
