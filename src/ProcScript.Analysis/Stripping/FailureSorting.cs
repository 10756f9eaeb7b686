using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>Says what it means that needs of a step are not met. Needs that mean the same thing make one failure.</summary>
/// <param name="state">The machine at the step.</param>
/// <param name="lastStep">The step that last changed a variable; null where none did.</param>
internal sealed class FailureSorting(MachineState state, Func<StateVariable, Step?> lastStep)
{
    /// <summary>The failures of a step, by what its action needs and does not have.</summary>
    public IEnumerable<StripFailure> Sort(Step step, ActionRequest request, IReadOnlyCollection<Need> unmet)
    {
        if (unmet.FirstOrDefault(need => IsOwn(need, request)) is { } own)
        {
            // Nothing else matters for what is done already.
            return [OwnFailure(step, request, own)];
        }

        if (unmet.OfType<TemporaryOff>().Select(need => need.Part).ToList() is { Count: > 0 } temporary)
        {
            return [new TemporaryGoesAlong(step, request.Part, [.. temporary])];
        }

        if (ActionTable.Row(step.Verb).Phase == ActionPhase.Work && request.Target is { } worked && unmet.Count > 0)
        {
            return [new WorkNotReached(step, worked, [.. unmet])];
        }

        return InOrder(step, request, unmet);
    }

    /// <summary>Whether a need is about the very thing that the action changes, or must have found changed.</summary>
    public static bool IsOwn(Need need, ActionRequest request) =>
        need.Declared is null && need.Item == request.Target;

    private IEnumerable<StripFailure> InOrder(Step step, ActionRequest request, IReadOnlyCollection<Need> unmet)
    {
        var inTheWay = unmet.OfType<PartOutOfTheWay>().ToList();
        var choices = unmet.OfType<AnyOf>().Where(IsOfHiders).ToList();
        if (inTheWay.Count + choices.Count > 0 && request.Target is { } hidden)
        {
            yield return new InTheWay(step, hidden, [.. inTheWay]) { Choices = [.. choices] };
        }

        var covers = unmet.OfType<CoverOff>().ToList();
        if (covers.Count > 0)
        {
            yield return new StillCovered(step, request.Joint, [.. covers.Select(Held)]);
        }

        if (unmet.Where(need => need is { Declared: null } and (PartInPlace or JointComplete or JointTight)).ToList() is { Count: > 0 } apart
            && request.Target is Joint closed)
        {
            yield return new ClosedTooEarly(step, closed, [.. apart]);
        }

        foreach (var need in unmet.Where(need => need.Declared is null))
        {
            switch (need)
            {
                case EnergyIsolated energy:
                    yield return new StillLive(step, request.Joint, energy.Energy);
                    break;
                case EnergyProvedDead { Energy: var energy } when state[need.Variable] == (int)EnergyState.Unproved:
                    yield return new NotProved(step, request.Target!, energy, lastStep(need.Variable));
                    break;
                case FluidEmpty fluid:
                    yield return new StillFull(step, request.Joint, fluid.Fluid);
                    break;
            }
        }

        var ties = unmet.OfType<JointOff>().Where(need => need.Declared is null).ToList();
        if (ties.Count > 0)
        {
            yield return step.Verb == Verb.Aside
                ? new StillTight(step, request.Part, [.. ties.Select(Held)])
                : new StillHeld(step, request.Part, [.. ties.Select(Held)]);
        }

        foreach (var failure in Conditions(step, request, unmet))
        {
            yield return failure;
        }
    }

    /// <summary>Whether a choice is about parts that are in the way.</summary>
    private static bool IsOfHiders(AnyOf choice) => choice.Ways.All(way => way is PartOutOfTheWay);

    private IEnumerable<StripFailure> Conditions(Step step, ActionRequest request, IReadOnlyCollection<Need> unmet)
    {
        var stated = unmet
            .Where(need => need is { Declared: not null } and not PartOutOfTheWay && !(need is AnyOf choice && IsOfHiders(choice) && request.Target is not null))
            .ToList();
        foreach (var need in stated.OfType<EnergyLive>())
        {
            if (lastStep(need.Variable) is { } isolated)
            {
                yield return new IsolatedBefore(step, request.Target, need, isolated);
            }
        }

        var others = stated.Where(need => need is not EnergyLive || lastStep(need.Variable) is null).ToList();
        if (others.Count > 0)
        {
            yield return new ConditionFails(step, request.Target, [.. others]);
        }
    }

    private StripFailure OwnFailure(Step step, ActionRequest request, Need need) => need switch
    {
        JointAttached { Joint: var joint } when state.Attached(joint) is > 0 and var attached =>
            new TooFewLeft(step, joint, request.Value, attached),
        JointMissing { Joint: var joint } when request.Verb == Verb.Replace => new TooFewOff(step, joint, request.Value, joint.Count - state.Attached(joint), 0),
        PartOut or JointOff when request.Verb != Verb.Fit => new NotOff(step, request.Target!),
        _ => new AlreadyDone(step, request.Target!, lastStep(need.Variable)),
    };

    private HeldJoint Held(JointNeed need) => new(need.Joint, state.Attached(need.Joint));
}
