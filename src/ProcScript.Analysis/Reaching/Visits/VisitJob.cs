using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching.Visits;

/// <summary>
/// A job as it goes into a visit: each action that it comes to is a step of its own. What it does only for the sake of its own later steps may be left
/// out where another job clears the way for these; what it does for its work, for its goal or to make safe is done in every visit.
/// </summary>
internal sealed class VisitJob
{
    private readonly StripRun _strip;
    private readonly WhereNeeded _call;
    private readonly HashSet<int> _served = [];
    private readonly HashSet<int> _kept = [];

    /// <summary>Spells a job out.</summary>
    /// <param name="alone">The job by itself, proven.</param>
    public VisitJob(Visit alone)
    {
        (Alone, _strip) = (alone, alone.Strip);
        _call = new WhereNeeded(Procedure.Declared, Procedure.Title);
        foreach (var action in _strip.Actions.Where(action => action.Origin is not InsertedCap))
        {
            var isFree = GoalOf(action) is null;
            foreach (var met in action.Needs)
            {
                (isFree ? _kept : _served).Add(met.MetBy);
            }
        }

        Stages = [.. _strip.Stages.Select(stage => (stage.Stage, Steps(stage.Actions)))];
        Work = Steps(_strip.Work);
        var goesAway = Procedure.Stages.SelectMany(stage => stage.Steps).Concat(Procedure.Work)
            .Where(step => step.Verb is Verb.Replace or Verb.Discard).Select(step => step.Target).OfType<Part>();
        Costs = new ReachCosts(_strip.Facts, Details(), ReachWeights.TimeAlone, [.. goesAway]) { Discarded = _strip.Discarded };
    }

    /// <summary>The job by itself.</summary>
    public Visit Alone { get; }

    /// <summary>The procedure.</summary>
    public Procedure Procedure => _strip.Procedure;

    /// <summary>The stages, each with its steps.</summary>
    public ImmutableArray<(Stage Stage, ImmutableArray<VisitStep> Steps)> Stages { get; }

    /// <summary>The work.</summary>
    public ImmutableArray<VisitStep> Work { get; }

    /// <summary>What things cost in this job.</summary>
    public ReachCosts Costs { get; }

    private ImmutableArray<VisitStep> Steps(ImmutableArray<PerformedAction> actions)
    {
        var steps = ImmutableArray.CreateBuilder<VisitStep>();
        foreach (var action in actions)
        {
            // Caps come of themselves.
            if (action.Origin is not InsertedCap)
            {
                steps.Add(new VisitStep(Spelled(action), GoalOf(action), Stays(action)));
            }

            steps.AddRange(_strip.Discards.Where(discard => discard.After == action.Number + 1)
                .Select(discard => new VisitStep(discard.Step with { WhereNeeded = _call }, null, true)));
        }

        return steps.ToImmutable();
    }

    private Step Spelled(PerformedAction action)
    {
        var step = StepOrigin.Step(action.Origin)!;
        return action.Changes.IsEmpty
            ? step with { WhereNeeded = _call }
            : step with
            {
                Verb = action.Verb,
                Target = action.Target,
                Count = action is { Target: Joint, Verb: not Verb.Loosen } ? action.Count : null,
                Position = action.PositionAfter,
                Details = StepOrigin.Details(action),
                Alerts = action.Origin is ExpandedStep { For: not null } ? [] : step.Alerts,
                Conditions = action.Origin.Conditions,
                WhereNeeded = _call,
            };
    }

    private bool Stays(PerformedAction action) =>
        action.Target is null or Energy or Fluid or { IsTemporary: true }
        || !_served.Contains(action.Number) || _kept.Contains(action.Number)
        || _strip.Discarded.Contains(action.Target)
        || Procedure.Goals.Any(goal => goal.Verb == action.Verb && goal.Target == action.Target);

    /// <summary>What an action of the strip brings about; null for work, for some of several pieces, and for what is temporary.</summary>
    private FreeingGoal? GoalOf(PerformedAction action) => action switch
    {
        { Changes: [] } or { Target: { IsTemporary: true } } => null,
        { Verb: Verb.Loosen, Target: { } joint } => new FreeingGoal(FreeingKind.Slack, joint),
        { Target: Joint joint } => ActionTable.Opening(joint).Verb == action.Verb && _strip.End.Attached(joint) == 0 ? new FreeingGoal(FreeingKind.Off, joint) : null,
        { Verb: Verb.Remove, Target: { } part } => new FreeingGoal(FreeingKind.Out, part),
        { Verb: Verb.Aside, Target: { } part } => new FreeingGoal(FreeingKind.Aside, part),
        { Verb: Verb.Support, Target: { } part } => new FreeingGoal(FreeingKind.Propped, part),
        { Verb: Verb.Verify, Target: { } energy } => new FreeingGoal(FreeingKind.Proved, energy),
        { Verb: Verb.Isolate, Target: Energy { VerifyAt: not null } energy } when action.Changes[0].After == (int)EnergyState.Dead => new FreeingGoal(FreeingKind.ProvedAtOnce, energy),
        { Target: Control control } => new FreeingGoal(FreeingKind.Switched, control) { Position = action.PositionAfter },
        { Verb: Verb.Isolate or Verb.Empty, Target: { } service } => new FreeingGoal(FreeingKind.Switched, service),
        _ => null,
    };

    private Func<Verb, MachineItem, ActionDetails> Details()
    {
        var said = new Dictionary<(Verb, MachineItem), ActionDetails>();
        foreach (var step in Stages.SelectMany(stage => stage.Steps).Select(one => one.Step))
        {
            if (step.Target is { } target)
            {
                said.TryAdd((step.Verb, target), step.Details);
            }
        }

        return (verb, item) => said.GetValueOrDefault((verb, item), ActionDetails.None);
    }
}
