using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>A refit rule has a verb of the strip.</summary>
public sealed class StripVerbInRefitRule : RefitFailureRule<StripVerbInRule>
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4008", "strip-verb-in-refit-rule", "A refit rule has a verb of the strip", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A line of the `refit` block orders a strip action. Refit rules order what puts the machine together: `fit`, "
            + "`fasten`, `plug` and their like.",
        Why: "In the refit nothing is undone or removed, so the rule binds nothing.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" { held by 2 pin as filter_pins }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                release guard_pins
                remove guard
                release filter_pins
                remove filter
              }
              refit {
                release filter_pins before fit guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" { held by 2 pin as filter_pins }
            }

            procedure filter_out "Take the filter out" on press {
              stage "Filter" {
                release guard_pins
                remove guard
                release filter_pins
                remove filter
              }
              refit {
                engage filter_pins before fit guard
              }
            }
            """);

    /// <inheritdoc/>
    protected override Finding Describe(StripVerbInRule failure, RefitAttempt attempt)
    {
        var (anchor, target) = (failure.Anchor, failure.Anchor.Target);
        var inverse = ActionTable.Row(anchor.Verb).Inverse ?? ActionTable.Closing(target).Verb;
        var verb = new SourceSpan(anchor.Source.Path, new TextSpan(anchor.Source.Span.Start, ActionTable.Row(anchor.Verb).Word.Length));
        return new Finding(
            Id,
            $"{ItemPhrases.Written(new NamedAction(anchor.Verb, target))} is no action of the refit",
            anchor.Source,
            "a refit rule orders what puts the machine together")
        {
            Help = $"write {ItemPhrases.Written(new NamedAction(inverse, target))}",
            Fixes = [StepEdits.ReplaceVerb(verb, inverse)],
        };
    }
}
