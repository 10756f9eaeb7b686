using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching;

/// <summary>
/// What things cost that are brought about on the way to something: the seconds of the steps that do it and of those that put it back, as the totals of a
/// plan take them, with what cures in full, and what else is to count.
/// </summary>
/// <param name="facts">The machine.</param>
/// <param name="given">What is said of single actions.</param>
/// <param name="weights">What counts beside time.</param>
/// <param name="goesAway">What the job replaces by its goals, so that no opening on it is capped.</param>
internal sealed class ReachCosts(MachineFacts facts, Func<Verb, MachineItem, ActionDetails> given, ReachWeights weights, ImmutableArray<Part> goesAway)
{
    private readonly Capping _capping = Capping.Of(facts, goesAway);

    /// <summary>What never goes back, so that to take it off is all that it costs.</summary>
    public IReadOnlySet<MachineItem> Discarded { get; init; } = ImmutableHashSet<MachineItem>.Empty;

    /// <summary>What is said of an action.</summary>
    public ActionDetails Details(Verb verb, MachineItem item) => given(verb, item);

    /// <summary>What a goal costs with the way back.</summary>
    public double Of(FreeingGoal goal)
    {
        var sum = 0.0;
        foreach (var request in Requests(goal))
        {
            var details = Details(request.Verb, request.Target!);
            sum += Of(Step(request, details) with { EndsProved = goal.Kind == FreeingKind.ProvedAtOnce || request is { Verb: Verb.Isolate, Target: Energy { VerifyAt: null } } });
            if (!Discarded.Contains(request.Target!) && ActionTable.Row(request.Verb).Inverse is { } inverse)
            {
                sum += Of(Step(request with { Verb = inverse }, RefitDetails.Of(details)));
            }

            if (_capping.After(request) is { } cap)
            {
                var caps = cap with { Value = cap.Value * _capping.CapsEach(cap.Target!) };
                sum += Of(Step(caps, ActionDetails.None)) + Of(Step(caps with { Verb = Verb.Uncap }, ActionDetails.None));
            }
        }

        return sum + (goal.Kind == FreeingKind.Renewed ? weights.Part * NewPieces(goal.Item) : 0);
    }

    /// <summary>What a step costs.</summary>
    public double Of(PlannedStep step) =>
        (StepTime.Of(step).Duration * (1 + (weights.Person * (step.People - 1))))
        + (weights.Part > 0 ? weights.Part * OrderList.NewParts(step).Sum(part => part.Count) : 0)
        + (weights.Risk > 0 && IsRisky(step) ? weights.Risk : 0);

    /// <summary>The actions of a strip or of the work that bring a goal about, as they are on a machine of which nothing is off.</summary>
    public IEnumerable<ActionRequest> Requests(FreeingGoal goal) => goal switch
    {
        { Kind: FreeingKind.Off, Item: Joint joint } => [new ActionRequest(ActionTable.Opening(joint).Verb, joint, joint.Count)],
        { Kind: FreeingKind.Slack, Item: Joint joint } => [new ActionRequest(Verb.Loosen, joint, joint.Count)],
        { Kind: FreeingKind.Fitted, Item: Part part } =>
        [
            new ActionRequest(Verb.Fit, part),
            .. facts.Ties(part).Where(joint => joint.Role == JointRole.Held).Select(joint => new ActionRequest(ActionTable.Closing(joint).Verb, joint, joint.Count)),
        ],
        { Kind: FreeingKind.Out } => [new ActionRequest(Verb.Remove, goal.Item)],
        { Kind: FreeingKind.Aside } => [new ActionRequest(Verb.Aside, goal.Item)],
        { Kind: FreeingKind.Propped } => [new ActionRequest(Verb.Support, goal.Item)],
        { Kind: FreeingKind.Proved } => [new ActionRequest(Verb.Verify, goal.Item)],
        { Kind: FreeingKind.Reached } => [new ActionRequest(Verb.Inspect, goal.Item)],
        { Kind: FreeingKind.Renewed } => [new ActionRequest(Verb.Replace, goal.Item)],
        { Kind: FreeingKind.Switched, Item: Energy { VerifyAt: not null } energy } => [new ActionRequest(Verb.Isolate, energy, (int)EnergyState.Unproved)],
        { Item: Control control } => [new ActionRequest(Verb.Set, control, goal.Position)],
        _ => [new ActionRequest(ActionTable.Opening(goal.Item).Verb, goal.Item)],
    };

    /// <summary>Whether a step touches something that can hurt.</summary>
    private bool IsRisky(PlannedStep step) => step.Target is { } target
        && (step.Details.Alerts.Any(alert => alert.Word <= SignalWord.Warning)
            || facts.Touching.By(target, step.Position).Any(touch =>
                !touch.Item.Hazards.IsEmpty || touch.Item.Alerts.Any(alert => alert.Word <= SignalWord.Warning)));

    private static int NewPieces(MachineItem item) => item is Joint { SingleUse: false } joint ? joint.Count : item is Joint ? 0 : 1;

    private static PlannedStep Step(ActionRequest request, ActionDetails details) => new()
    {
        Number = 0,
        Phase = PlanPhase.Strip,
        Card = 0,
        Verb = request.Verb,
        Target = request.Target,
        Count = request.Target is Joint || request.Verb is Verb.Cap or Verb.Uncap ? request.Value : 0,
        Position = request.Target is Control ? request.Value : -1,
        Details = details,
        Cure = CureTime.Of(request.Verb, request.Target, details),
        Source = default,
    };
}
