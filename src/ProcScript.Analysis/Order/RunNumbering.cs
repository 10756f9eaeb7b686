using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Order;

/// <summary>Numbers the actions of a run and says what each had to wait for.</summary>
internal sealed class RunNumbering
{
    private readonly int _first;
    private readonly BackgroundWork _background;
    private readonly CuringWork _curing = new();
    private readonly ImmutableArray<PerformedAction>.Builder _actions = ImmutableArray.CreateBuilder<PerformedAction>();
    private readonly ImmutableArray<OrderEdge>.Builder _edges = ImmutableArray.CreateBuilder<OrderEdge>();

    /// <summary>Begins at 0, with nothing in the background.</summary>
    public RunNumbering()
        : this(0, new BackgroundWork())
    {
    }

    private RunNumbering(int first, BackgroundWork background) => (_first, _background) = (first, background);

    /// <summary>The number of the next action.</summary>
    public int Next => _first + _actions.Count;

    /// <summary>The actions added here.</summary>
    public ImmutableArray<PerformedAction> Actions => _actions.ToImmutable();

    /// <summary>The edges between actions added here.</summary>
    public ImmutableArray<OrderEdge> Edges => _edges.ToImmutable();

    /// <summary>Numbers what comes after, with what still goes on in the background; this one stays as it is.</summary>
    public RunNumbering After() => new(Next, _background.Copy());

    /// <summary>Adds the next action.</summary>
    /// <param name="draft">The action.</param>
    /// <param name="needs">What it needs, and the numbers of the actions that meet that.</param>
    /// <param name="before">The edges that end at it, by numbers.</param>
    public void Add(ActionDraft draft, ImmutableArray<MetNeed> needs, ReadOnlySpan<OrderEdge> before)
    {
        var change = draft.Change;
        var isControl = draft.Request.Target is Control;
        var action = new PerformedAction
        {
            Number = Next,
            Verb = draft.Request.Verb,
            Target = draft.Request.Target,
            Count = draft.Request.Target is Joint ? draft.Request.Value : 0,
            PositionBefore = isControl && change is { } from ? from.Before : -1,
            PositionAfter = isControl && change is { } to ? to.After : -1,
            Origin = draft.Origin,
            InBackground = draft.InBackground,
            Needs = needs,
            Changes = change is { } made ? [made] : [],
            WaitsFor = _background.IsIdle && _curing.IsIdle ? [] : Wait(draft.Request, needs, before),
            Cure = CureTime.Of(draft.Request.Verb, draft.Request.Target, draft.Origin),
        };
        _edges.AddRange(before);
        _actions.Add(action);
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
        foreach (var work in _background.WorkOn(request.Target).Where(work => work >= _first))
        {
            _edges.Add(new OrderEdge(work, Next, new AwaitsWork()));
        }

        var awaited = needs.Select(need => need.MetBy).ToHashSet();
        var loading = awaited.ToHashSet();
        foreach (var edge in before)
        {
            awaited.Add(edge.Earlier);
            if (edge.Reason is Ruled)
            {
                // What only comes later because it would be in the way leaves a fresh joint unloaded; an author's rule may have its reasons.
                loading.Add(edge.Earlier);
            }
        }

        return [.. _background.WaitFor(request.Target, awaited).Concat(_curing.WaitFor(request.Verb, request.Target, loading)).Order()];
    }
}
