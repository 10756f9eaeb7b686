using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>A refit rule cannot hold.</summary>
public sealed class RuleCycle : RefitFailureRule<RuleCircle>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4003", "rule-cycle", "A refit rule cannot hold", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The author's refit rules and what the machine needs make a circle: each action in it waits for the next.",
        Why: "No order keeps the rule. Either the rule asks for something that cannot be done, or the machine says that "
            + "something is in the way which is not.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" {
                behind guard
                held by 2 pin as filter_pins
              }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                release guard_pins
                remove guard
                release filter_pins
                remove filter
              }
              refit {
                fit guard before fit filter
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" {
                behind guard
                held by 2 pin as filter_pins
              }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                release guard_pins
                remove guard
                release filter_pins
                remove filter
              }
              refit {
                check "Tap the filter: no dust." before fit guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(RuleCircle failure, RefitAttempt attempt)
    {
        var rule = failure.Edges[0];
        return new Finding(Id, Message(rule), RefitFinding.Source(rule.Reason), "this rule cannot hold")
        {
            Related = RefitFinding.Chain(failure.Edges.Skip(1)),
            Help = failure.IsAboutTest ? RefitFinding.TestHelp : "take the rule out, or change what stands in its way",
            Fixes = rule.Reason is Ruled { Rule: OrderRule order } ? [.. StepEdits.Delete(attempt.Strip, order)] : [],
        };
    }

    /// <summary>An energy or a fluid that is wanted back too early is told as that.</summary>
    private static string Message(CircleEdge rule)
    {
        var (earlier, later) = (rule.Earlier.Action, rule.Later.Action);
        return (earlier.Verb, later.Target) switch
        {
            (Verb.Restore, Joint) => $"the rule restores {ItemPhrases.The(earlier.Target!)} while {ItemPhrases.The(later.Target)} is still open",
            (Verb.Fill, Joint) => $"the rule fills {ItemPhrases.The(earlier.Target!)} while {ItemPhrases.The(later.Target)} is still open",
            (Verb.Restore, Energy) =>
                $"the rule restores {ItemPhrases.The(earlier.Target!)} before {ItemPhrases.The(later.Target)}, which has to come back first",
            _ => $"{ItemPhrases.Written(rule.Later)} cannot wait for {ItemPhrases.Written(rule.Earlier)}",
        };
    }
}
