using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tools;

/// <summary>
/// Another order of the steps of one stage that changes tools less often. Only what takes joints and parts off is moved, and only within
/// stretches of such steps: power, fluids, supports, controls, work, checks, what runs in the background and what a <c>strip</c> expands
/// to stay where they are, for their place may have reasons that no condition states. A part that comes off or goes aside right after its
/// last fastening stays with that step, so that nothing is left hanging.
/// </summary>
internal static class StageOrder
{
    /// <summary>The steps of a stage in the new order; null where there is none to suggest.</summary>
    /// <param name="strip">The strip.</param>
    /// <param name="stage">The stage.</param>
    /// <param name="tools">The tools of each of its actions.</param>
    /// <param name="inHand">The tools in hand when the stage begins; null where none is.</param>
    public static ImmutableArray<Step>? Find(
        StripRun strip,
        StageRun stage,
        ImmutableArray<ImmutableArray<string>> tools,
        ImmutableArray<string>? inHand)
    {
        var steps = stage.Stage.Steps;
        var actions = stage.Actions;
        if (actions.Length != steps.Length || !actions.All(action => action.Origin is WrittenStep) || !steps.All(step => step.Calls.IsEmpty))
        {
            // A step without an action of its own (a discard, a `strip`, which may come to one), or somebody else's stage.
            return null;
        }

        if (actions.Any(action => action.Target is { IsTemporary: true }))
        {
            // What goes on for the job goes on at its moment.
            return null;
        }

        var changes = new ToolChanges(inHand);
        var order = ImmutableArray.CreateBuilder<Step>(steps.Length);
        var from = 0;
        while (from < actions.Length)
        {
            var end = from;
            while (end < actions.Length && end - from < ToolOrder.MostPieces && IsMovable(actions[end], tools[end]))
            {
                end++;
            }

            ImmutableArray<int> stretch = end > from + 1 ? Reordered(strip, actions.AsSpan()[from..end], tools.AsSpan()[from..end], changes.InHand) : [0];
            foreach (var place in stretch)
            {
                order.Add(((WrittenStep)actions[from + place].Origin).Step);
                changes.Take(tools[from + place]);
            }

            from = Math.Max(end, from + 1);
        }

        return order.SequenceEqual(steps) ? null : order.MoveToImmutable();
    }

    private static bool IsMovable(PerformedAction action, ImmutableArray<string> tools) =>
        action is { Origin: WrittenStep, InBackground: false, WaitsFor.IsEmpty: true } && action.Verb switch
        {
            Verb.Undo or Verb.Loosen or Verb.Release or Verb.Unplug or Verb.Disconnect or Verb.Cut => true,
            Verb.Remove or Verb.Aside => tools.IsEmpty,
            _ => false,
        };

    /// <summary>The new order of a stretch, as places in it.</summary>
    private static ImmutableArray<int> Reordered(
        StripRun strip,
        ReadOnlySpan<PerformedAction> actions,
        ReadOnlySpan<ImmutableArray<string>> tools,
        ImmutableArray<string>? inHand)
    {
        var order = strip.OrderWithin(actions[0].Number, actions.Length);
        var pieceOf = new int[actions.Length];
        for (var i = 1; i < actions.Length; i++)
        {
            var follows = actions[i].Target is Part && actions[i - 1].Target is Joint && order.Contains((i - 1, i));
            pieceOf[i] = pieceOf[i - 1] + (follows ? 0 : 1);
        }

        var before = new ulong[pieceOf[^1] + 1];
        foreach (var (earlier, later) in order)
        {
            before[pieceOf[later]] |= pieceOf[earlier] == pieceOf[later] ? 0 : 1UL << pieceOf[earlier];
        }

        var pieces = ImmutableArray.CreateBuilder<ToolWork>(before.Length);
        for (var i = 0; i < actions.Length; i++)
        {
            if (pieceOf[i] == pieces.Count)
            {
                // A part that follows takes no tools.
                pieces.Add(new ToolWork(tools[i], before[pieceOf[i]]));
            }
        }

        var places = ImmutableArray.CreateBuilder<int>(actions.Length);
        foreach (var piece in ToolOrder.Find(pieces.MoveToImmutable(), inHand))
        {
            for (var i = Array.IndexOf(pieceOf, piece); i < pieceOf.Length && pieceOf[i] == piece; i++)
            {
                places.Add(i);
            }
        }

        return places.MoveToImmutable();
    }
}
