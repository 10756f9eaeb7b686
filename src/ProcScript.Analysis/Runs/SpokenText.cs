using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs;

/// <summary>The texts that a card prints with an action.</summary>
internal static class SpokenText
{
    /// <summary>What is said of an action: its own text, how it is done, what is checked after, and what its item says of doing it.</summary>
    public static IEnumerable<string> Of(PerformedAction action)
    {
        var own = action.Origin switch
        {
            RuledCheck check => check.Rule.Text,
            WrittenStep { Step.Text: { } text } when action.Target is null => text,
            _ => null,
        };
        var item = action switch
        {
            { Verb: Verb.Fill, Target: Fluid fluid } => fluid.Fill,
            { Verb: Verb.Restore, Target: Energy energy } => energy.Restore,
            { Verb: Verb.Connect, Target: Joint joint } => joint.Engage,
            _ => null,
        };
        var details = StepOrigin.Details(action);
        return [.. own is null ? [] : new[] { own }, .. item is null ? [] : new[] { item }, .. details.How, .. details.Checks];
    }
}
