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
            yield return step.Book.Say("tighten.locker");
        }

        if (step.Closes && joint.Oiled)
        {
            yield return step.Book.Say("tighten.oil");
        }

        if (step.Closes && joint is { Stretch: true, SingleUse: true })
        {
            yield return step.Book.Say("tighten.stretch");
        }

        if (step is { Closes: true, LeavesSlack: true })
        {
            yield return step.OtherHalf > 0 ? step.Book.Say("tighten.later-at", ("step", step.OtherHalf)) : step.Book.Say("tighten.later");
        }

        if (step is { Verb: Verb.Tighten, OtherHalf: > 0 })
        {
            yield return step.Book.Say("tighten.snug-since", ("step", step.OtherHalf));
        }

        if (ToolList.Torque(step) is not { } torque)
        {
            yield break;
        }

        if (joint.Prevailing is not null)
        {
            yield return step.Book.Say("tighten.self-locking");
        }

        if (step.Verb == Verb.Retorque && (step.Details.Torque ?? joint.Torque)!.IsToAngle)
        {
            yield return step.Book.Say("tighten.no-angle");
        }

        if (Pattern(step) is { } pattern)
        {
            yield return step.Book.Say(Message(pattern));
        }

        if (step.Count > 1 && torque.Stages.Length + torque.Angles.Length > 1)
        {
            yield return step.Book.Say("tighten.stages");
        }

        if (torque.IsToAngle)
        {
            yield return step.Book.Say("tighten.mark-heads");
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

    private static string Message(TighteningPattern pattern) => pattern switch
    {
        TighteningPattern.Star => "tighten.star",
        TighteningPattern.InsideOut => "tighten.inside-out",
        _ => "tighten.listed",
    };
}
