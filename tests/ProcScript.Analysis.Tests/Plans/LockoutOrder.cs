using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>
/// The order of 29 CFR 1910.147 (d) and (e), as a plan and its run must keep it. It is told from the actions and the machine alone, without
/// the needs that the compiler worked out.
/// </summary>
internal sealed class LockoutOrder
{
    private static readonly string[] Application = ["prepare", "shut down", "isolate", "lock", "release", "wait", "verify"];

    /// <summary>
    /// What of 29 CFR 1910.147 (e) goes before the energy comes back, in this order: the area clear and all parts intact (1), people clear (2)(i),
    /// each device taken off by whoever put it on (3), people told (2)(ii). Read on two training pages that quote it.
    /// </summary>
    private static readonly string[] Release = ["area", "whole", "people", "locks", "tell"];

    private readonly ProcedureOutcome _outcome;
    private readonly Plan _plan;
    private readonly HashSet<Energy> _isolated = [];
    private readonly HashSet<Part> _out;
    private readonly Dictionary<Joint, int> _off = [];

    private LockoutOrder(ProcedureReport report)
    {
        (_outcome, _plan) = (report.Outcome, report.CreatePlan()!);
        _out = [.. report.Procedure.Machine.Parts.Where(part => part.IsTemporary)];
    }

    /// <summary>How many energies were isolated and came back.</summary>
    public static int Hold(ProcedureReport report)
    {
        LockoutOrder order = new(report);
        order.Cards();
        foreach (var action in order._outcome.Strip!.Actions.Concat(order._outcome.Refit!.Actions))
        {
            order.Follow(action);
        }

        Assert.Empty(order._isolated);
        return order._plan.Energies.Length;
    }

    private void Cards()
    {
        var steps = _plan.AllSteps();
        Assert.Equal(_plan.Energies.Select(energy => energy.IsolatedAt).Order(), _plan.Energies.Select(energy => energy.IsolatedAt));
        foreach (var energy in _plan.Energies)
        {
            // The lines stand in the order of the rule. The verification, after the wait, belongs to the step that isolates, or to one of its own
            // where nobody could get at the place of it before.
            Assert.Equal(Application.Where(Lines(energy.MakeSafe).Contains), Lines(energy.MakeSafe));
            Assert.Empty(Application.Except(Lines(energy.MakeSafe)).Except(["wait"]));
            Assert.Equal(energy.Name, _outcome.Refit!.Actions.Single(action => action.Number + 1 == energy.RestoredAt).Target?.Name);
            var isolating = steps[energy.IsolatedAt - 1];
            Assert.Equal("isolate", isolating.Verb);
            var proving = steps.FirstOrDefault(step => step.Verb == "verify" && step.Item == energy.Name) ?? isolating;
            Assert.True(proving.Number >= isolating.Number, $"{energy.Title} is verified before it is isolated");
            // Both lead to the lines of the energy on the make-safe card, where its wait and its reading stand, and nowhere else.
            var place = _plan.Energies.IndexOf(energy) + 1;
            Assert.Equal((place, place), (isolating.MakeSafe, proving.MakeSafe));
            Assert.Equal((null, null), (isolating.Reading, proving.Reading));
            Assert.Equal(energy.Wait.Length > 0, energy.MakeSafe.Any(line => line.Action == "wait" && line.Text == $"{energy.Wait}."));
            Assert.Equal("restore", steps[energy.RestoredAt - 1].Verb);
            Assert.True(energy.RestoredAt > energy.IsolatedAt);
        }

        // Each step that restores has the lines before it, and no other step has any.
        Assert.All(steps, step => Assert.Equal(step.Verb == "restore", step.Return is not null));
        Assert.All(steps.Select(step => step.Return).OfType<PlanReturn>(), back =>
        {
            // What has no device to lock, such as a spring or stored heat, has no lock that comes off.
            Assert.Equal(Release.Where(Lines(back.Lines).Contains), Lines(back.Lines));
            Assert.Empty(Release.Except(Lines(back.Lines)).Except(["locks"]));
        });
    }


    private static List<string> Lines(IEnumerable<PlanSafetyLine> lines) => [.. lines.Select(line => line.Action)];

    private void Follow(PerformedAction action)
    {
        switch (action)
        {
            case { Verb: Verb.Isolate, Target: Energy energy }:
                Assert.True(_isolated.Add(energy));
                Assert.All(energy.After, first => Assert.Contains(first, _isolated));
                break;
            case { Verb: Verb.Restore, Target: Energy energy }:
                Assert.True(_isolated.Remove(energy));
                Assert.All(energy.After, first => Assert.Contains(first, _isolated));
                Assert.DoesNotContain(_off.Keys, joint => joint.On == energy
                    && !_outcome.Strip!.Discarded.Contains(joint) && !(joint.IsTemporary && IsOnBench(joint)));
                break;
            case { Target: Part part, Verb: Verb.Remove }:
                _out.Add(part);
                break;
            case { Target: Part part, Verb: Verb.Fit }:
                _out.Remove(part);
                break;
            case { Target: Joint joint, Count: > 0, Verb: not (Verb.Loosen or Verb.Tighten) } when IsMoved(action):
                Handle(joint, action.Changes[0].Before - action.Changes[0].After);
                break;
        }
    }

    private static bool IsMoved(PerformedAction action) => action.Changes is [{ Variable.Kind: States.StateKind.Attached }];

    /// <summary>
    /// A joint comes off or goes on: nothing on it is live, unless both of its ends lie on one bench. So none on it is closed after it is back:
    /// components are operationally intact, (e)(1).
    /// </summary>
    private void Handle(Joint joint, int off)
    {
        if (joint.On is { } energy && !IsOnBench(joint))
        {
            Assert.Contains(energy, _isolated);
        }

        _off[joint] = _off.GetValueOrDefault(joint) + off;
        if (_off[joint] == 0)
        {
            _off.Remove(joint);
        }
    }

    private bool IsOnBench(Joint joint) => joint.Other is { } other && Bench(joint.Owner) is { } bench && Bench(other) == bench;

    private Part? Bench(Part part)
    {
        Part? at = part;
        while (at is not null && !_out.Contains(at))
        {
            at = at.Parent;
        }

        return at;
    }
}
