using ProcScript.Analysis.Baselines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Baselines;

/// <summary>The baseline knows a finding that is not there any more.</summary>
public sealed class StaleBaselineEntry : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7031", "stale-baseline-entry", "The baseline knows a finding that is gone", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The file that `--baseline` names lists a finding that the check does not find any more, or lists it more often than it is found.",
        Why: "A baseline only shrinks. A left-over entry hides the next mistake of the same sort in that file.",
        Wrong: """
            // The baseline says that this file lacks a torque. It does not any more.
            tool socket_13 "13 mm socket"
            fastener m8 "M8 bolt" { thread M8x1.25  grade 8.8  drive socket_13  torque 22 N.m }
            """,
        Right: """
            // `procscript baseline write PATH -o FILE` has dropped the entry.
            tool socket_13 "13 mm socket"
            fastener m8 "M8 bolt" { thread M8x1.25  grade 8.8  drive socket_13  torque 22 N.m }
            """);

    internal static Finding At(SourceSpan place, BaselineEntry entry, int found) =>
        new(
            Id,
            found == 0
                ? $"{entry.Rule} is no longer found in {entry.File}"
                : $"{entry.Rule} is found {Times(found)} in {entry.File} where the baseline has {entry.Count}",
            place,
            entry.Message)
        {
            Help = "write the baseline again with `procscript baseline write`: it drops what is gone and adds nothing",
        };

    private static string Times(int count) => count == 1 ? "once" : $"{count} times";
}
