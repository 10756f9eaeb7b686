using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Which way a left-hand thread is turned. Every hand knows the right-hand ones, so of these nothing is said.</summary>
internal static class TurnWords
{
    /// <summary>The sentence for a step that turns a left-hand thread; empty for any other.</summary>
    public static string Of(PlannedStep step) => step.Joint is { } joint && ThreadDesignation.SaysLeftHand(joint.Kind.Thread) && Message(step) is { } message ? step.Book.Say(message) : "";

    private static string? Message(PlannedStep step) => step switch
    {
        { Opens: true } or { Verb: Verb.Loosen } => "turn.undo",
        { Closes: true } or { Verb: Verb.Tighten } => "turn.tighten",
        { Verb: Verb.Adjust } => "turn.adjust",
        _ => null,
    };
}
