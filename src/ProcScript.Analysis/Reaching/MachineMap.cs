using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Stripping;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching;

/// <summary>The parts of a machine in the layers in which they can come off at the earliest, and what hides what.</summary>
public sealed record MachineMap
{
    /// <summary>The name of the machine.</summary>
    public required string Machine { get; init; }

    /// <summary>What people call it, and how it stands.</summary>
    public required string Title { get; init; }

    /// <summary>The parts, the outermost layer first, within a layer as declared.</summary>
    public required ImmutableArray<MappedPart> Parts { get; init; }

    /// <summary>What has to be away before what.</summary>
    public required ImmutableArray<MappedEdge> Edges { get; init; }

    /// <summary>Maps a machine as it comes in, or as a job leaves it after a step.</summary>
    /// <param name="library">The library.</param>
    /// <param name="machine">The machine's name; null where there is but one.</param>
    /// <param name="with">Exactly the options that the machine has; null for as few as there are.</param>
    /// <param name="job">The job whose state is shown; null for the whole machine.</param>
    /// <param name="after">The last step that is done of it; 0 for none.</param>
    /// <exception cref="ReachRefusedException">There is no such machine, job or step.</exception>
    public static MachineMap Of(Library library, string? machine, ImmutableArray<string>? with, string? job, int after)
    {
        ArgumentNullException.ThrowIfNull(library);
        if (job is not null)
        {
            var procedure = AskedJobs.Find(library, [job], with)[0];
            if (machine is not null && procedure.Machine.Name != machine)
            {
                throw new ReachRefusedException($"'{job}' is a job on '{procedure.Machine.Name}', not on '{machine}'.");
            }

            var facts = new MachineFacts(procedure.Machine);
            var run = StripRunner.Run(new(library, isNoted: false), facts, procedure);
            if (!run.IsSound || after < 0 || after > run.Actions.Length)
            {
                throw new ReachRefusedException(run.IsSound
                    ? $"'{job}' has no step {after} before its refit: strip and work have the steps 1 to {run.Actions.Length}."
                    : $"'{job}' cannot be done as written; 'procscript check' says why.");
            }

            var state = run.Start.Copy();
            foreach (var change in run.Actions.Take(after).SelectMany(action => action.Changes))
            {
                state.Apply(change);
            }

            return Of(facts, state, $"{procedure.Machine.Title}, after step {after} of '{procedure.Title}'");
        }

        var found = AskedMachine.Plain(library, machine, with);
        var whole = new MachineFacts(found);
        return Of(whole, MachineState.Whole(whole.Layout), found.Title);
    }

    private static MachineMap Of(MachineFacts facts, MachineState state, string title)
    {
        var ranks = facts.Machine.Parts.Select(part => facts.Freedom.Rank(new FreeingGoal(FreeingKind.Out, part)) ?? -1).ToArray();
        var layers = ranks.Where(rank => rank >= 0).Distinct().Order().ToList();
        var moment = new MachineMoment(facts, state);
        return new MachineMap
        {
            Machine = facts.Machine.Name,
            Title = title,
            Parts =
            [
                .. facts.Machine.Parts
                    .Select(part => new MappedPart(
                        CanonicalName.Written(part.Name),
                        part.Title,
                        ranks[part.Index] < 0 ? -1 : layers.IndexOf(ranks[part.Index]),
                        part.Parent is { } parent ? CanonicalName.Written(parent.Name) : "",
                        state.Place(part) switch { PartPlace.Out => part.IsTemporary ? "temporary" : "out", PartPlace.Aside => "aside", _ => moment.CanDo(Verb.Remove, part) ? "free" : "fitted" },
                        [.. facts.Ties(part).Select(joint => $"{moment.Words(joint)}: {Plans.Words.ItemWords.Whole(joint)}")]))
                    .OrderBy(part => part.Layer < 0 ? int.MaxValue : part.Layer),
            ],
            Edges = [.. Hiding(facts.Machine).Distinct()],
        };
    }

    private static IEnumerable<MappedEdge> Hiding(Machine machine) =>
        from part in machine.Parts
        from condition in part.Conditions.Concat(part.WayOut).Concat(part.Joints.SelectMany(joint => joint.Conditions))
        from way in condition.Each
        where way is { Item: Part, State: NeededState.OutOfTheWay or NeededState.Out } && way.Item != part
        select new MappedEdge(CanonicalName.Written(way.Item.Name), CanonicalName.Written(part.Name), !condition.Ways.IsEmpty);
}

/// <summary>A part on the map.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Layer">How many layers have to give way before it can come off; -1 where it never can.</param>
/// <param name="Parent">The part that it lies in; empty for none.</param>
/// <param name="State"><c>fitted</c>, <c>free</c> to come off, <c>aside</c>, <c>out</c>, or <c>temporary</c> and off.</param>
/// <param name="Ties">What ties it to the rest, and how that stands.</param>
public sealed record MappedPart(string Name, string Title, int Layer, string Parent, string State, ImmutableArray<string> Ties);

/// <summary>A part that has to be away before another, or a joint of that, can be got at.</summary>
/// <param name="From">The part that hides.</param>
/// <param name="To">The part that is hidden.</param>
/// <param name="IsChoice">Whether another way would do as well.</param>
public sealed record MappedEdge(string From, string To, bool IsChoice);
