using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>
/// Tells of steps that are written <c>where needed</c> whether they are: whether what they are to bring about is so already. Work is done once
/// the same has been done to the same thing.
/// </summary>
/// <param name="layout">Where the variables of the machine lie.</param>
/// <param name="state">The state at hand.</param>
/// <param name="replaced">What has been replaced so far.</param>
/// <param name="discarded">What has been discarded so far.</param>
internal sealed class NeededSteps(
    StateLayout layout, MachineState state, IReadOnlySet<MachineItem> replaced, IReadOnlySet<MachineItem> discarded)
{
    private readonly Dictionary<int, int> _changedBy = [];
    private readonly Dictionary<(Verb Verb, MachineItem? Target, string? Text), int> _worked = [];
    private readonly Dictionary<(WhereNeeded Call, Joint Joint), int> _asked = [];
    private readonly ImmutableArray<SkippedStep>.Builder _skipped = ImmutableArray.CreateBuilder<SkippedStep>();

    /// <summary>The index of the stage that is performed; -1 for the work.</summary>
    public int Stage { get; set; }

    /// <summary>What was left out so far.</summary>
    public ImmutableArray<SkippedStep> Skipped => _skipped.ToImmutable();

    /// <summary>Takes note of an action that has been performed.</summary>
    public void Note(ActionDraft action, int number)
    {
        foreach (var change in action.Changes)
        {
            _changedBy[layout.Slot(change.Variable)] = number;
        }

        if (action.Changes.IsEmpty)
        {
            _worked.TryAdd((action.Request.Verb, action.Request.Target, (action.Origin as WrittenStep)?.Step.Text), number);
        }
    }

    /// <summary>Whether nothing is left to do for a step, so that it is left out, which is noted.</summary>
    public bool LeavesOut(Step step, List<ActionDraft> done)
    {
        if (step.Count is { } count && step is { WhereNeeded: { } call, Target: Joint joint })
        {
            _asked[(call, joint)] = _asked.GetValueOrDefault((call, joint)) + count;
        }

        if (!IsDone(step))
        {
            return false;
        }

        if (step.Verb != Verb.Discard)
        {
            _skipped.Add(new SkippedStep(step, Stage, done.Count, DoneBy(step)));
        }

        return true;
    }

    /// <summary>
    /// How many pieces a step takes off that is needed, or puts on, of what is temporary. A number means so many altogether, counted over the steps of
    /// one call: those that are off already count.
    /// </summary>
    public int Left(Step step, Joint joint)
    {
        var (there, done) = (state.Attached(joint), joint.Count - state.Attached(joint));
        if (IsClosing(step))
        {
            (there, done) = (done, there);
        }

        return step.Count is null ? there : _asked[(step.WhereNeeded!, joint)] - done;
    }

    private static bool IsClosing(Step step) => step.Target is Joint joint && ActionTable.Closing(joint).Verb == step.Verb;

    /// <summary>The checks in the block of a step that was left out, but for those that its own text has asked for already.</summary>
    public List<Step> ChecksOf(Step step, List<ActionDraft> done)
    {
        if (step.Details.Checks.IsEmpty)
        {
            return [];
        }

        var earlier = DoneBy(step) is >= 0 and var number ? Wording.RefitFinding.StepOf(done[number].Origin) : null;
        return
        [
            .. step.Details.Checks
                .Where(check => earlier?.Details.Checks.Contains(check) != true)
                .Select(check => new Step
                {
                    Verb = Verb.Check,
                    Text = check,
                    WhereNeeded = step.WhereNeeded,
                    VerbSpan = step.VerbSpan,
                    TargetSpan = step.VerbSpan,
                    Source = step.Source,
                    Calls = step.Calls,
                }),
        ];
    }

    /// <summary>Whether a step takes pieces of a joint off, or puts them on.</summary>
    private static bool IsCounted(Step step) =>
        step.Target is Joint joint && (ActionTable.Opening(joint).Verb == step.Verb || IsClosing(step));

    private bool IsDone(Step step) => step switch
    {
        { Verb: Verb.Loosen, Target: Joint joint } => state.Attached(joint) == 0 || Value(StateKind.Slack, joint) == 1,
        { Verb: Verb.Tighten, Target: Joint joint } => state.Attached(joint) > 0 && Value(StateKind.Slack, joint) == 0,
        { Target: Joint joint } when IsCounted(step) => Left(step, joint) <= 0,
        { Verb: Verb.Fit, Target: Part part } => state.Place(part) == PartPlace.Fitted,
        { Verb: Verb.Remove or Verb.Strip, Target: Part part } => state.Place(part) == PartPlace.Out,
        { Verb: Verb.Aside, Target: Part part } => state.Place(part) != PartPlace.Fitted,
        { Verb: Verb.Support, Target: Part part } => state.Place(part) == PartPlace.Out || Value(StateKind.Propped, part) == 1,
        { Verb: Verb.Set, Target: Control control } => Value(StateKind.Position, control) == step.Position,
        { Verb: Verb.Isolate, Target: Energy energy } => Value(StateKind.Live, energy) != (int)EnergyState.Live,
        { Verb: Verb.Verify, Target: Energy energy } => Value(StateKind.Live, energy) == (int)EnergyState.Dead,
        { Verb: Verb.Empty, Target: Fluid fluid } => Value(StateKind.Full, fluid) == 0,
        { Verb: Verb.Replace, Target: { } item } => replaced.Contains(item),
        { Verb: Verb.Discard, Target: { } item } => discarded.Contains(item),
        _ => _worked.ContainsKey((step.Verb, step.Target, step.Text)),
    };

    /// <summary>The number of the action that has done what a step is to do; -1 where the machine comes in so.</summary>
    private int DoneBy(Step step) => step switch
    {
        { Verb: Verb.Loosen, Target: Joint joint } => ChangedBy(state.Attached(joint) == 0 ? StateKind.Attached : StateKind.Slack, joint),
        // What has been fastened is tight, whoever tightened it once more.
        { Verb: Verb.Tighten, Target: { } joint } => Math.Max(ChangedBy(StateKind.Slack, joint), ChangedBy(StateKind.Attached, joint)),
        { Target: Joint joint } when IsCounted(step) => ChangedBy(StateKind.Attached, joint),
        { Verb: Verb.Support, Target: Part part } => ChangedBy(state.Place(part) == PartPlace.Out ? StateKind.Place : StateKind.Propped, part),
        { Verb: Verb.Remove or Verb.Strip or Verb.Aside or Verb.Fit, Target: Part part } => ChangedBy(StateKind.Place, part),
        { Verb: Verb.Set, Target: { } control } => ChangedBy(StateKind.Position, control),
        { Verb: Verb.Isolate or Verb.Verify, Target: { } energy } => ChangedBy(StateKind.Live, energy),
        { Verb: Verb.Empty, Target: { } fluid } => ChangedBy(StateKind.Full, fluid),
        _ => _worked.GetValueOrDefault((step.Verb, step.Target, step.Text), -1),
    };

    private int Value(StateKind kind, MachineItem item) => state[new StateVariable(kind, item.Index)];

    private int ChangedBy(StateKind kind, MachineItem item) => _changedBy.GetValueOrDefault(layout.Slot(new StateVariable(kind, item.Index)), -1);
}
