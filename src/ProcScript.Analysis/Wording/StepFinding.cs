using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Wording;

/// <summary>Findings at a step of a procedure.</summary>
internal static class StepFinding
{
    /// <summary>A finding at the verb of a step; where the step was brought by a call, the call is told.</summary>
    public static Finding At(RuleInfo rule, Step step, string message, string label, params IEnumerable<LabeledSpan> related) =>
        new(rule, message, step.VerbSpan, label)
        {
            Related = [.. related, .. step.Calls.Select(call => new LabeledSpan(call, "called from here"))],
        };
}
