using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Refitting;

/// <summary>
/// Splits what a <c>snug</c> rule names: all of it goes in finger-tight where it would be fastened, and gets its torque in a step of its
/// own, once the other fasteners of the same part and all that the rule names are in. Anything else stays as it is.
/// </summary>
internal static class SnugHalves
{
    /// <summary>The exact reverse with the joints of snug rules in halves.</summary>
    public static ImmutableArray<Inverse> Split(ImmutableArray<Inverse> inverses, StripRun strip)
    {
        var ruleOf = new Dictionary<Joint, SnugRule>();
        foreach (var rule in strip.Procedure.Rules.OfType<SnugRule>())
        {
            foreach (var joint in rule.Joints.Select(anchor => anchor.Target).OfType<Joint>())
            {
                ruleOf.TryAdd(joint, rule);
            }
        }

        return ruleOf.Count == 0 ? inverses : WithTorque(FingerTight(inverses, ruleOf, strip), ruleOf);
    }

    /// <summary>Each fastening of a joint that a rule names leaves it slack, whether or not it was so before.</summary>
    private static List<Inverse> FingerTight(ImmutableArray<Inverse> inverses, Dictionary<Joint, SnugRule> ruleOf, StripRun strip) =>
    [
        .. inverses.Select(inverse => inverse.Request is { Verb: Verb.Fasten, Target: Joint joint } && ruleOf.ContainsKey(joint)
            ? inverse with
            {
                Request = inverse.Request with { Verb = Verb.Snug },
                Reversals = [.. inverse.Reversals, new StateChange(Slack(joint), strip.End[Slack(joint)], 1)],
            }
            : inverse),
    ];

    /// <summary>The torque of each joint that is left slack, after the last of those that it waits for.</summary>
    private static ImmutableArray<Inverse> WithTorque(List<Inverse> split, Dictionary<Joint, SnugRule> ruleOf)
    {
        var torques = new List<(int After, Inverse Inverse)>();
        foreach (var joint in split.Where(inverse => inverse.Request.Verb == Verb.Snug).Select(inverse => inverse.Request.Joint).Distinct())
        {
            var first = split.FindIndex(inverse => inverse.Request.Verb == Verb.Snug && inverse.Request.Target == joint);
            var last = split.FindLastIndex(inverse => inverse.Request.Target == joint && inverse.Request.Verb is Verb.Snug or Verb.Tighten);
            if (split[last].Request.Verb == Verb.Snug)
            {
                var rule = ruleOf[joint];
                var after = split.FindLastIndex(inverse =>
                    inverse.Request.Target is Joint other && (ruleOf.GetValueOrDefault(other) == rule || HoldsTheSame(other, joint)));
                torques.Add((after, Torque(joint, split, split[first].Undoes, rule)));
            }
        }

        var ordered = ImmutableArray.CreateBuilder<Inverse>(split.Count + torques.Count);
        for (var i = 0; i < split.Count; i++)
        {
            ordered.Add(split[i]);
            ordered.AddRange(torques.Where(torque => torque.After == i).Select(torque => torque.Inverse));
        }

        return ordered.DrainToImmutable();
    }

    private static Inverse Torque(Joint joint, List<Inverse> split, PerformedAction undo, SnugRule rule)
    {
        var pieces = split.Where(inverse => inverse.Request.Verb == Verb.Snug && inverse.Request.Target == joint).Sum(inverse => inverse.Request.Value);
        var origin = new Tightened(undo, rule);
        return new Inverse(
            new ActionRequest(Verb.Tighten, joint, pieces) { Conditions = origin.Conditions, EndsFastening = true },
            origin,
            undo,
            [new StateChange(Slack(joint), 1, 0)]);
    }

    private static bool HoldsTheSame(Joint one, Joint other) => one.Role == JointRole.Held && one.Owner == other.Owner;

    private static StateVariable Slack(Joint joint) => new(StateKind.Slack, joint.Index);
}
