using System.Collections.Immutable;
using System.Runtime.InteropServices;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Proving;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
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
        if (attempt.Run is not null)
        {
            return attempt;
        }

        // Where neither finds an order, a circle through an author's rule is what to tell: there the rule is to blame, not the machine.
        var second = new RefitDerivation(facts, strip, asInTheMachine: true).Attempt();
        return second.Run is not null || (attempt.Failures.Any(failure => failure is NeedCircle) && !second.Failures.Any(failure => failure is NeedCircle))
            ? second
            : attempt;
    }

    /// <summary>The order rules that ask for what the machine asks for already, or the other rules do; each by itself.</summary>
    public static ImmutableArray<OrderRule> Implied(MachineFacts facts, StripRun strip)
    {
        var derivation = new RefitDerivation(facts, strip, asInTheMachine: false);
        List<OrderEdge> edges = [.. derivation._rules.Edges, .. derivation._links.Edges];
        if (new PrecedenceGraph(derivation._reference.Drafts.Count, edges).LeastOrder() is null)
        {
            // Work that moves from the bench into the machine leads to other edges, and is rare.
            return [];
        }

        var after = edges.ToLookup(edge => edge.Earlier);
        return
        [
            .. derivation._rules.Edges
                .Where(edge => edge.Reason is Ruled { Rule: OrderRule } && IsImplied(edge, after))
                .Select(edge => (OrderRule)((Ruled)edge.Reason).Rule),
        ];
    }

    /// <summary>Whether some way leads from one end of an edge to the other without an edge of the same rule.</summary>
    private static bool IsImplied(OrderEdge rule, ILookup<int, OrderEdge> after)
    {
        var reached = new HashSet<int>();
        var open = new Stack<int>([rule.Earlier]);
        while (open.TryPop(out var at))
        {
            foreach (var edge in after[at])
            {
                var isItself = edge.Reason is Ruled ruled && ReferenceEquals(ruled.Rule, ((Ruled)rule.Reason).Rule);
                if (!isItself && edge.Later == rule.Later)
                {
                    return true;
                }

                if (!isItself && reached.Add(edge.Later))
                {
                    open.Push(edge.Later);
                }
            }
        }

        return false;
    }

    private RefitAttempt Attempt()
    {
        List<RefitFailure> failures = [.. OneWayParts.Failures(_strip), .. _rules.Failures, .. NeverMet()];
        List<OrderEdge> edges = [.. _rules.Edges, .. _links.Edges];
        var graph = new PrecedenceGraph(_reference.Drafts.Count, edges);
        if (graph.LeastOrder() is not { } order)
        {
            failures.Add(new CircleReport(_facts, _reference.Drafts, graph).Describe());
            return new RefitAttempt(_strip, null, [.. failures]);
        }

        var run = Number(Together(edges) ?? order, edges);
        if (failures.Count == 0)
        {
            failures.AddRange(RefitProof.Failures(_facts, _strip, run.Actions));
        }

        return new RefitAttempt(_strip, run, [.. failures]);
    }

    private IEnumerable<RefitFailure> NeverMet() =>
        _links.Unmet.Select(unmet => new NeverMet(CircleReport.Name(_reference.Drafts[unmet.Action]), unmet.Need));

    /// <summary>The order in which who leads another keeps close to it; null where there is none, or nobody leads.</summary>
    private IReadOnlyList<int>? Together(List<OrderEdge> edges)
    {
        if (_reference.Leaders.Count == 0)
        {
            return null;
        }

        // A leader waits for all that the action waits for that it leads, but for the leaders themselves.
        var before = new NumberedGroups<OrderEdge>(_reference.Drafts.Count, edges, edge => edge.Later);
        var ledBy = _reference.Leaders.ToLookup(leader => leader.Led, leader => leader.Index);
        List<OrderEdge> closer = [.. edges];
        foreach (var leader in _reference.Leaders)
        {
            foreach (var edge in before[leader.Led])
            {
                if (!ledBy[leader.Led].Contains(edge.Earlier))
                {
                    closer.Add(edge with { Later = leader.Index });
                }
            }
        }

        return new PrecedenceGraph(_reference.Drafts.Count, closer).LeastOrder();
    }

    private RefitRun Number(IReadOnlyList<int> order, List<OrderEdge> edges)
    {
        var spelled = order.Select(index => TestActions.Of(_reference.Drafts[index], _strip.Start)).ToList();
        var numbering = _strip.Numbering.After(spelled.Sum(actions => actions.Length), edges.Count);
        var (first, last) = (new int[order.Count], new int[order.Count]);
        var next = numbering.Next;
        for (var i = 0; i < order.Count; i++)
        {
            first[order[i]] = next;
            next += spelled[i].Length;
            last[order[i]] = next - 1;
        }

        var before = new NumberedGroups<OrderEdge>(order.Count, edges, edge => edge.Later);
        var lastInStrip = _strip.LastChanges();
        var incoming = new List<OrderEdge>();
        foreach (var (place, index) in order.Index())
        {
            incoming.Clear();
            foreach (var edge in before[index])
            {
                incoming.Add(new OrderEdge(last[edge.Earlier], first[index], edge.Reason));
            }

            var needs = ImmutableArray.CreateBuilder<MetNeed>(_links.Met(index).Length);
            foreach (var (need, metBy) in _links.Met(index))
            {
                needs.Add(new MetNeed(need, metBy >= 0 ? last[metBy] : lastInStrip.GetValueOrDefault(need.Variable)?.Number ?? -1));
            }

            numbering.Add(spelled[place][0], needs.MoveToImmutable(), CollectionsMarshal.AsSpan(incoming));
            foreach (var action in spelled[place].AsSpan(1..))
            {
                numbering.Add(action, [], [new OrderEdge(numbering.Next - 1, numbering.Next, new WithinTest())]);
            }
        }

        var (actions, ordered) = numbering.End();
        return new RefitRun { Actions = actions, Order = ordered };
    }
}
