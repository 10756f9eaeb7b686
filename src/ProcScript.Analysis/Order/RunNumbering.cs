using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Order;

/// <summary>Numbers the actions of a run and says what each had to wait for. One serves the strip and then the refit.</summary>
internal sealed class RunNumbering
{
    private readonly BackgroundWork _background;
    private readonly List<PerformedAction> _actions;
    private readonly List<OrderEdge> _edges;

    /// <summary>Begins at 0, with nothing in the background.</summary>
    public RunNumbering()
        : this(new BackgroundWork(), [], [])
    {
    }

    private RunNumbering(BackgroundWork background, List<PerformedAction> actions, List<OrderEdge> edges)
    {
        _background = background;
        _actions = actions;
        _edges = edges;
    }

    /// <summary>The number of the next action.</summary>
    public int Next => _actions.Count;

    /// <summary>Goes on from here without touching this one.</summary>
    public RunNumbering Copy() => new(_background.Copy(), [.. _actions], [.. _edges]);

    /// <summary>Adds the next action.</summary>
    /// <param name="draft">The action.</param>
    /// <param name="metBy">For each of its needs the number of the action that meets it.</param>
    /// <param name="before">The edges that end at it, by numbers.</param>
    public PerformedAction Add(ActionDraft draft, IReadOnlyList<int> metBy, IReadOnlyList<OrderEdge> before)
    {
        var awaited = _background.WorkOn(draft.Request.Target).Select(work => new OrderEdge(work, Next, new AwaitsWork())).ToList();
        var action = new PerformedAction
        {
            Number = Next,
            Verb = draft.Request.Verb,
            Target = draft.Request.Target,
            Count = draft.Request.Target is Joint ? draft.Request.Value : 0,
            PositionBefore = draft is { Request.Target: Control, Change: { } from } ? from.Before : -1,
            PositionAfter = draft is { Request.Target: Control, Change: { } to } ? to.After : -1,
            Origin = draft.Origin,
            InBackground = draft.InBackground,
            Needs = [.. draft.Needs.Select((need, i) => new MetNeed(need, metBy[i]))],
            Changes = draft.Change is { } change ? [change] : [],
            WaitsFor = _background.WaitFor(draft.Request.Target, before.Select(edge => edge.Earlier).Concat(metBy)),
        };
        _edges.AddRange(before);
        _edges.AddRange(awaited);
        _actions.Add(action);
        if (action.InBackground)
        {
            _background.Start(action.Number, action.Verb, action.Target);
        }

        return action;
    }

    /// <summary>The actions from a number on.</summary>
    public ImmutableArray<PerformedAction> ActionsFrom(int number) => [.. _actions.Skip(number)];

    /// <summary>The edges between actions from a number on, one for each pair.</summary>
    public ImmutableArray<OrderEdge> EdgesFrom(int number) =>
        [.. _edges.Where(edge => edge.Earlier >= number && edge.Later >= number).DistinctBy(edge => (edge.Earlier, edge.Later))];
}
