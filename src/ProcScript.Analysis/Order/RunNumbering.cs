using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Order;

/// <summary>Numbers the actions of a run and says what each had to wait for.</summary>
internal sealed class RunNumbering
{
    private readonly int _first;
    private readonly BackgroundWork _background;
    private readonly CuringWork _curing = new();
    private readonly ImmutableArray<PerformedAction>.Builder _actions;
    private readonly ImmutableArray<OrderEdge>.Builder _edges;

    /// <summary>Begins at 0, with nothing in the background.</summary>
    /// <param name="count">How many actions there are.</param>
    /// <param name="edges">How many edges there are between them.</param>
    public RunNumbering(int count, int edges)
        : this(0, new BackgroundWork(), count, edges)
    {
    }

    private RunNumbering(int first, BackgroundWork background, int count, int edges)
    {
        (_first, _background, Next) = (first, background, first);
        _actions = ImmutableArray.CreateBuilder<PerformedAction>(count);
        _edges = ImmutableArray.CreateBuilder<OrderEdge>(edges);
    }

    /// <summary>The number of the next action.</summary>
    public int Next { get; private set; }

    /// <summary>The actions added here, and what must go before what among them; both are handed out once, when all is added.</summary>
    public (ImmutableArray<PerformedAction> Actions, ImmutableArray<OrderEdge> Order) End() => (_actions.MoveToImmutable(), _edges.DrainToImmutable());

    /// <summary>Numbers what comes after, with what still goes on in the background; this one stays as it is.</summary>
    /// <param name="count">How many actions there are.</param>
    /// <param name="edges">How many edges there are between them.</param>
    public RunNumbering After(int count, int edges) => new(Next, _background.Copy(), count, edges);

    /// <summary>Adds the next action.</summary>
    /// <param name="draft">The action.</param>
    /// <param name="needs">What it needs, and the numbers of the actions that meet that.</param>
    /// <param name="before">The edges that end at it, by numbers.</param>
    public void Add(ActionDraft draft, ImmutableArray<MetNeed> needs, ReadOnlySpan<OrderEdge> before)
    {
        var isControl = draft.Request.Target is Control;
        var action = new PerformedAction
        {
            Number = Next,
            Verb = draft.Request.Verb,
            Target = draft.Request.Target,
            Count = draft.Request.Target is Joint ? draft.Request.Value : 0,
            PositionBefore = isControl && draft.Changes is [var from] ? from.Before : -1,
            PositionAfter = isControl && draft.Changes is [var to] ? to.After : -1,
            Origin = draft.Origin,
            InBackground = draft.InBackground,
            Needs = needs,
            Changes = draft.Changes,
            // A pause lets run what runs and cure what cures.
            WaitsFor = (_background.IsIdle && _curing.IsIdle) || draft.Request.Verb == Verb.Pause ? [] : Wait(draft.Request, needs, before),
            Cure = CureTime.Of(draft.Request.Verb, draft.Request.Target, draft.Origin),
        };
        _edges.AddRange(before);
        _actions.Add(action);
        Next++;
        if (action.InBackground)
        {
            _background.Start(action.Number, action.Verb, action.Target);
        }

        if (action.Cure is not null)
        {
            _curing.Start(action.Number, action.Target);
        }
    }

    private ImmutableArray<int> Wait(ActionRequest request, ImmutableArray<MetNeed> needs, ReadOnlySpan<OrderEdge> before)
    {
        foreach (var work in _background.WorkOn(request.Target))
        {
            if (work >= _first)
            {
                _edges.Add(new OrderEdge(work, Next, new AwaitsWork()));
            }
        }

        List<int> awaited = [];
        List<int> loading = [];
        foreach (var need in needs)
        {
            awaited.Add(need.MetBy);
            loading.Add(need.MetBy);
        }

        foreach (var edge in before)
        {
            awaited.Add(edge.Earlier);
            if (edge.Reason is Ruled)
            {
                // What only comes later because it would be in the way leaves a fresh joint unloaded; an author's rule may have its reasons.
                loading.Add(edge.Earlier);
            }
        }

        List<int> ended = [.. _background.WaitFor(request.Target, awaited), .. _curing.WaitFor(request.Verb, request.Target, loading)];
        ended.Sort();
        return [.. ended];
    }
}
