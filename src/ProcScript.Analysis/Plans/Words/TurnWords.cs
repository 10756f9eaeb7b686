using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Which way a left-hand thread is turned. Every hand knows the right-hand ones, so of these nothing is said.</summary>
internal static class TurnWords
{
    /// <summary>The sentence for a step that turns a left-hand thread; empty for any other.</summary>
    public static string Of(PlannedStep step) => step.Joint is { } joint && ThreadDesignation.SaysLeftHand(joint.Kind.Thread) ? Words(step) : "";

    private static string Words(PlannedStep step) => step switch
    {
        { Opens: true } or { Verb: Verb.Loosen } => "Left-hand thread: undo clockwise.",
        { Closes: true } or { Verb: Verb.Tighten } => "Left-hand thread: tighten anticlockwise.",
        { Verb: Verb.Adjust } => "Left-hand thread: clockwise loosens, anticlockwise tightens.",
        _ => "",
    };
}
