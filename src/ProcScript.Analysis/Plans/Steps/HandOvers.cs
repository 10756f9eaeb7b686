using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>What is handed over at each pause of a job: the state of the run at that step, told sort by sort.</summary>
internal sealed class HandOvers
{
    private readonly StripRun _strip;
    private readonly ImmutableArray<PlannedStep> _steps;
    private readonly ImmutableArray<PlanBag> _bags;
    private readonly ImmutableArray<PlanTemporary> _temporary;
    private readonly StepPlaces _places;
    private readonly Wordbook _book;
    private readonly MachineState _state;
    private readonly Dictionary<StateVariable, int> _since = [];
    private readonly Dictionary<int, PlanHandOver> _byStep = [];
    private readonly ImmutableArray<(double Start, double Held, double End)> _schedule;

    private HandOvers(StripRun strip, Wordbook book, ImmutableArray<PlannedStep> steps, ImmutableArray<PlanBag> bags, ImmutableArray<PlanTemporary> temporary)
    {
        (_strip, _book, _steps, _bags, _temporary, _state) = (strip, book, steps, bags, temporary, strip.Start.Copy());
        _places = StepPlaces.Of(steps);
        _schedule = JobTimes.Starts(steps);
    }

    /// <summary>By the numbers of the steps at which a job stops.</summary>
    public static IReadOnlyDictionary<int, PlanHandOver> Of(
        StripRun strip, RefitRun refit, Wordbook book, ImmutableArray<PlannedStep> steps, ImmutableArray<PlanBag> bags, ImmutableArray<PlanTemporary> temporary)
    {
        if (!steps.Any(step => step.Verb == Verb.Pause))
        {
            return ImmutableDictionary<int, PlanHandOver>.Empty;
        }

        var handOvers = new HandOvers(strip, book, steps, bags, temporary);
        foreach (var (action, step) in strip.Actions.Concat(refit.Actions).Zip(steps))
        {
            foreach (var change in action.Changes)
            {
                handOvers._state.Apply(change);
                handOvers._since[change.Variable] = step.Number;
            }

            if (step.Verb == Verb.Pause)
            {
                handOvers._byStep.Add(step.Number, handOvers.At(step));
            }
        }

        return handOvers._byStep;
    }

    private PlanHandOver At(PlannedStep pause)
    {
        var standing = new MachineStanding(_strip, _state, _book);
        var next = pause.Number < _steps.Length ? _steps[pause.Number] : null;
        return new PlanHandOver(
            pause.Number,
            pause.Text ?? "",
            pause.Details.Time is { } time ? _book.Print(time) : "",
            pause.Number - 1,
            _steps.Length,
            [.. Sections(pause, standing).Where(section => !section.Lines.IsEmpty)],
            StandingCautions.Of(_strip.Procedure.Machine, standing, _book),
            next?.Number ?? 0,
            next is null ? "" : string.Join(", ", new[] { StepText.Of(next), _places.Of(next) }.Where(words => words.Length > 0)));
    }

    /// <summary>What can hurt first, then what lies about, then what goes on by itself.</summary>
    private IEnumerable<PlanHandOverSection> Sections(PlannedStep pause, MachineStanding standing)
    {
        yield return new("energy", _book.Say("over.energies"), [.. Energies(standing)]);
        yield return new("fluid", _book.Say("over.fluids"), [.. standing.FluidsOut.Select(fluid => Line(fluid.Title, StateKind.Full, fluid))]);
        yield return new("propped", _book.Say("over.propped"), [.. standing.PartsPropped.Select(Propped)]);
        yield return new("control", _book.Say("over.controls"), [.. standing.ControlsAway.Select(control => Line(
            _book.Say("over.control", ("control", control.Title), ("position", ItemWords.Position(control, standing.Value(StateKind.Position, control))), ("home", ItemWords.Position(control, 0))),
            StateKind.Position,
            control))]);
        yield return new("open", _book.Say("over.joints"), [.. standing.JointsOpen.Select(joint => Line(
            $"{ItemWords.Whole(joint)}: {standing.StateOf(joint)}",
            _state.Attached(joint) < joint.Count ? StateKind.Attached : StateKind.Slack,
            joint))]);
        yield return new("temporary", _book.Say("over.temporary"), [.. Temporary(pause.Number)]);
        yield return new("aside", _book.Say("over.aside"), [.. standing.PartsOff.Where(part => _state.Place(part) == PartPlace.Aside).Select(part => Line(
            part.Title, StateKind.Place, part))]);
        yield return new("out", _book.Say("over.out"), [.. standing.PartsOff.Where(part => _state.Place(part) == PartPlace.Out).Select(Out)]);
        yield return new("bag", _book.Say("over.bags"), [.. _bags.Select(bag => Bag(bag, pause.Number)).OfType<PlanHandOverLine>()]);
        yield return new("goes on", _book.Say("over.goes-on"), [.. GoesOn(pause)]);
    }

    private IEnumerable<PlanHandOverLine> Energies(MachineStanding standing)
    {
        var energies = _strip.Procedure.Machine.Energies;
        var off = energies.Where(energy => (EnergyState)standing.Value(StateKind.Live, energy) != EnergyState.Live).ToList();
        foreach (var energy in off)
        {
            var isProved = (EnergyState)standing.Value(StateKind.Live, energy) == EnergyState.Dead;
            var held = new SafetyLines(_book).Lock(energy).Select(line => " " + _book.Say("over.lock", ("text", line.Text)));
            yield return Line(
                _book.Say(isProved ? "over.isolated" : "over.unproved", ("energy", energy.Title)) + string.Concat(held),
                StateKind.Live,
                energy);
        }

        if (off.Count == 0)
        {
            yield return new PlanHandOverLine(
                energies.IsEmpty ? _book.Say("over.no-energy") : _book.Say("over.all-live", ("energies", string.Join(", ", energies.Select(energy => energy.Title)))), 0, null);
        }
        else if (off.Count < energies.Length)
        {
            yield return new PlanHandOverLine(_book.Say("over.live", ("energies", string.Join(", ", energies.Except(off).Select(energy => energy.Title)))), 0, null);
        }
    }

    private PlanHandOverLine Propped(Part part)
    {
        var line = Line(part.Title, StateKind.Propped, part);
        var tools = _steps[line.Step - 1].Details.Tools;
        return tools.IsEmpty ? line : line with { Text = _book.Say("over.propped-on", ("part", part.Title), ("tools", string.Join(", ", tools.Select(tool => ItemWords.Of(tool, _book))))) };
    }

    private PlanHandOverLine Out(Part part)
    {
        var line = Line(_strip.Replaced.Contains(part) ? _book.Say("over.new-goes-in", ("part", part.Title)) : part.Title, StateKind.Place, part);
        return line with { Place = _steps[line.Step - 1].Details.Store ?? "" };
    }

    /// <summary>Caps and temporary parts of which some are on.</summary>
    private IEnumerable<PlanHandOverLine> Temporary(int now) =>
        _temporary.Where(one => one.IsOnAfter(now - 1)).Select(one => new PlanHandOverLine(
            string.Join(", ", new[] { ItemWords.Pieces(one.Count, one.Title), one.Where }.Where(words => words.Length > 0)),
            one.OnAt.Last(step => step < now),
            null));

    /// <summary>A bag with what is in it now; null where that is nothing.</summary>
    private PlanHandOverLine? Bag(PlanBag bag, int now)
    {
        var inside = bag.Contents.Where(line => line.StripStep < now && (line.RefitStep == 0 || line.RefitStep > now)).ToList();
        var name = bag.Name.Length > 0 ? $" ({bag.Name})" : "";
        var contents = string.Join("; ", inside.GroupBy(line => line.Title, line => line.Count).Select(sort => ItemWords.Pieces(sort.Sum(), sort.Key)));
        return inside.Count == 0 ? null : new PlanHandOverLine(_book.Say("over.bag", ("number", $"{bag.Number}{name}"), ("contents", contents)), inside[0].StripStep, null);
    }

    /// <summary>What cures or runs when one person comes to the pause.</summary>
    private IEnumerable<PlanHandOverLine> GoesOn(PlannedStep pause) =>
        from step in _steps.Take(pause.Number - 1)
        where (step.Cure is not null || step.InBackground) && _schedule[step.Number - 1].End > _schedule[pause.Number - 1].Start
        select new PlanHandOverLine(
            step.Cure is { } cure
                ? _book.Say("over.cures", ("item", ItemWords.Whole(step.Target!)), ("time", _book.Print(cure)))
                : _book.Say("over.running", ("step", StepText.Of(step))),
            step.Number,
            null);

    private PlanHandOverLine Line(string text, StateKind kind, MachineItem item) =>
        new(text, _since.GetValueOrDefault(new StateVariable(kind, item.Index)), null);
}
