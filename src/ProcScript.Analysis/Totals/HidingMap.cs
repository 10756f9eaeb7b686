using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Totals;

/// <summary>The map of a job: the parts it touches, in the order they come off, and which of them hides which.</summary>
internal static class HidingMap
{
    /// <summary>Draws the map.</summary>
    public static PlanMap Of(Procedure procedure, ImmutableArray<PlannedStep> steps)
    {
        var moves = Moves(steps);
        var goals = procedure.Goals.Select(goal => PartOf(goal.Target)).OfType<Part>().ToHashSet();
        var stays = steps.Select(step => PartOf(step.Target))
            .Concat(goals)
            .OfType<Part>()
            .Distinct()
            .Where(part => !part.IsTemporary && !moves.ContainsKey(part));
        var parts = moves.OrderBy(move => move.Value.Step)
            .Select(move => (Part: move.Key, move.Value.Step, Move: move.Value.IsOff ? "off" : "aside"))
            .Concat(stays.Select(part => (Part: part, Step: 0, Move: "stays")))
            .ToList();
        var shown = parts.Select(part => part.Part).ToHashSet();
        return new PlanMap(
            [.. parts.Select(node => new PlanMapNode(node.Part.Name, node.Part.Title, node.Step, node.Move, goals.Contains(node.Part)))],
            [
                .. parts.SelectMany(node => Hiders(node.Part, moves)
                    .Where(shown.Contains)
                    .Select(front => new PlanMapEdge(front.Name, node.Part.Name))),
            ]);
    }

    /// <summary>The parts that move: the step they come off at, else the first at which they go aside.</summary>
    private static Dictionary<Part, (int Step, bool IsOff)> Moves(ImmutableArray<PlannedStep> steps)
    {
        var moves = new Dictionary<Part, (int Step, bool IsOff)>();
        foreach (var step in steps.Where(step => step.Part is { IsTemporary: false } && step.Verb is Verb.Aside or Verb.Remove))
        {
            var isOff = step.Verb == Verb.Remove;
            if (!moves.TryGetValue(step.Part!, out var known) || (isOff && !known.IsOff))
            {
                moves[step.Part!] = (step.Number, isOff);
            }
        }

        return moves;
    }

    /// <summary>
    /// What has to be out of the way to get at the part or at what ties it, by its own words and by those of the parts that it lies in: of a choice
    /// what the job takes away.
    /// </summary>
    private static IEnumerable<Part> Hiders(Part part, Dictionary<Part, (int Step, bool IsOff)> moves) =>
        part.Joints.Cast<MachineItem>()
            .Prepend(part)
            .SelectMany(item => item.Conditions)
            .Concat(part.WayOut)
            .Concat(moves.TryGetValue(part, out var move) && !move.IsOff ? part.Aside?.Conditions ?? [] : [])
            .Concat(Around(part, moves).SelectMany(outer => outer.Conditions))
            .Where(condition => condition.Phase != NeedsPhase.Refit)
            .SelectMany(condition => condition.Each.Where(way => condition.Ways.IsEmpty || (way.Item is Part other && moves.ContainsKey(other))))
            .Where(condition => condition.State is NeededState.OutOfTheWay or NeededState.Out or NeededState.Aside)
            .Select(condition => condition.Item)
            .OfType<Part>()
            .Where(front => front != part)
            .Distinct();

    /// <summary>The parts that it lies in while it is worked on: one that has come off before lies on the bench, where nothing is in the way.</summary>
    private static IEnumerable<Part> Around(Part part, Dictionary<Part, (int Step, bool IsOff)> moves)
    {
        var before = moves.TryGetValue(part, out var move) ? move.Step : int.MaxValue;
        for (var outer = part.Parent; outer is not null && !(moves.TryGetValue(outer, out var off) && off.IsOff && off.Step < before); outer = outer.Parent)
        {
            yield return outer;
        }
    }

    private static Part? PartOf(MachineItem? item) => item switch
    {
        Part part => part,
        Joint joint => joint.Owner,
        _ => null,
    };
}
