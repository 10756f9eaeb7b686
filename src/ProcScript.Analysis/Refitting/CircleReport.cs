using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Refitting;

/// <summary>Says why no order of the refit keeps every edge: the shortest circle, and what it means.</summary>
/// <param name="facts">The machine.</param>
/// <param name="drafts">The actions.</param>
/// <param name="graph">The edges.</param>
internal sealed class CircleReport(MachineFacts facts, IReadOnlyList<ActionDraft> drafts, PrecedenceGraph graph)
{
    /// <summary>An action with where it comes from.</summary>
    public static RefitStep Name(ActionDraft draft) => new(new NamedAction(draft.Request.Verb, draft.Request.Target), draft.Origin);

    /// <summary>The failure.</summary>
    public RefitFailure Describe()
    {
        var circle = ShortestCircle.In(graph);
        var ruled = circle.FindIndex(edge => edge.Reason is Ruled);
        if (ruled < 0)
        {
            return (RefitFailure?)PowerWanted(circle) ?? new NeedCircle(Edges(circle));
        }

        List<OrderEdge> turned = [.. circle[ruled..], .. circle[..ruled]];
        return (RefitFailure?)PowerWanted(turned) ?? new RuleCircle(Edges(turned));
    }

    private ImmutableArray<CircleEdge> Edges(IEnumerable<OrderEdge> circle) =>
        [.. circle.Select(edge => new CircleEdge(Name(drafts[edge.Earlier]), Name(drafts[edge.Later]), edge.Reason))];

    /// <summary>
    /// The failure for a circle that runs through an energy which is wanted live before all joints on it are closed and all that guards it
    /// is in place.
    /// </summary>
    private PowerBeforeClosing? PowerWanted(List<OrderEdge> circle)
    {
        foreach (var edge in circle)
        {
            if (edge.Reason is Enables { Need: EnergyLive } or Ruled && drafts[edge.Earlier].Request is { Verb: Verb.Restore, Target: Energy energy })
            {
                var open = OpenAfter(edge.Later, energy, edge.Earlier);
                return open.IsEmpty ? null : new PowerBeforeClosing(energy, open, Name(drafts[edge.Later]), Edges(circle));
            }
        }

        return null;
    }

    /// <summary>The joints on an energy, and the guards of it, that come back only with an action or after it.</summary>
    private ImmutableArray<MachineItem> OpenAfter(int action, Energy energy, int restore)
    {
        var seen = new HashSet<int>([action, restore]);
        var open = new Queue<int>([action]);
        var closed = new HashSet<MachineItem>();
        Close(action);
        while (open.TryDequeue(out var next))
        {
            foreach (var edge in graph.After(next))
            {
                if (seen.Add(edge.Later))
                {
                    open.Enqueue(edge.Later);
                    Close(edge.Later);
                }
            }
        }

        return [.. facts.Guards.ExposedBy(energy).Concat(facts.Guards.Of(energy, [])).SelectMany(Held).Distinct().Where(closed.Contains)];

        IEnumerable<MachineItem> Held(MachineItem item) => item is Part part
            ? facts.Ties(part).Where(joint => joint.Role == JointRole.Held).Prepend<MachineItem>(part)
            : [item];

        void Close(int index)
        {
            if (drafts[index].Request.Target is Joint or Part)
            {
                closed.Add(drafts[index].Request.Target!);
            }
        }
    }
}
