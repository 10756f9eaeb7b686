using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Tools;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What goes on a thread, and in what order the fasteners of a joint are tightened; common practice, no source.</summary>
internal static class TighteningWords
{
    /// <summary>The sentences for a step; none where it tightens nothing or nothing is said.</summary>
    public static IEnumerable<string> Of(PlannedStep step)
    {
        if (step.Joint is not { } joint)
        {
            yield break;
        }

        if (step.Closes && joint.ThreadLocker)
        {
            yield return "Put thread locker on the clean, dry threads.";
        }

        if (step.Closes && joint.Oiled)
        {
            yield return "Oil the threads and the face under the head lightly.";
        }

        if (step.Closes && joint is { Stretch: true, SingleUse: true })
        {
            yield return "Stretch bolts: always new.";
        }

        if (step is { Closes: true, LeavesSlack: true })
        {
            yield return step.OtherHalf > 0 ? $"No torque yet: it comes at step {step.OtherHalf}." : "No torque yet.";
        }

        if (step is { Verb: Verb.Tighten, OtherHalf: > 0 })
        {
            yield return $"Finger-tight since step {step.OtherHalf}.";
        }

        if (ToolList.Torque(step) is not { } torque)
        {
            yield break;
        }

        if (joint.Prevailing is not null)
        {
            yield return "Self-locking: add the running torque to the torque given here. Set the wrench to both together.";
        }

        if (step.Verb == Verb.Retorque && (step.Details.Torque ?? joint.Torque)!.IsToAngle)
        {
            yield return "Do not turn on by the angle again.";
        }

        if (Pattern(step) is { } pattern)
        {
            yield return Words(pattern);
        }

        if (step.Count > 1 && torque.Stages.Length + torque.Angles.Length > 1)
        {
            yield return "Bring all of them through one stage before the next.";
        }

        if (torque.IsToAngle)
        {
            yield return "Mark the heads before you turn them on by the angle.";
        }
    }

    /// <summary>The order in which the pieces of a step are tightened; null where it does not matter or nothing is said.</summary>
    public static TighteningPattern? Pattern(PlannedStep step) =>
        step is { Joint: { } joint, Count: > 1 } && ToolList.Torque(step) is not null && (step.Details.Pattern ?? joint.Pattern) is { } pattern and not TighteningPattern.None
            ? pattern
            : null;

    /// <summary>The word of the language for an order.</summary>
    public static string WordOf(TighteningPattern pattern) => pattern switch
    {
        TighteningPattern.Star => "star",
        TighteningPattern.InsideOut => "inside out",
        TighteningPattern.Listed => "listed",
        _ => "",
    };

    private static string Words(TighteningPattern pattern) => pattern switch
    {
        TighteningPattern.Star => "Tighten crosswise (star): each one across from the one before.",
        TighteningPattern.InsideOut => "Tighten from the middle outwards.",
        _ => "Tighten in the order that is listed.",
    };
}
