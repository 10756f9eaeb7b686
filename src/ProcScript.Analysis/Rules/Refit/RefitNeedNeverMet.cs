using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Refit;

/// <summary>The refit needs something that is never so.</summary>
public sealed class RefitNeedNeverMet : RefitRunRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC4006", "refit-need-never-met", "The refit needs something that is never so", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Putting something back asks for what no moment of the refit offers: a part out that never comes out, a fluid "
            + "that has not been emptied.",
        Why: "The strip goes well, and the machine cannot be put back: the worst moment to find out.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part lid "lid" {
                held by 2 pin as lid_pins
                refit needs guard out
              }
            }

            procedure lid_off "Take the lid off" on press {
              stage "Lid" {
                release lid_pins
                remove lid
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part lid "lid" {
                held by 2 pin as lid_pins
                refit needs guard out
              }
            }

            procedure lid_off "Take the lid off" on press {
              stage "Lid" {
                release guard_pins
                remove guard
                release lid_pins
                remove lid
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(RefitAttempt attempt) =>
        // A condition of a part binds its joints too, and is told once.
        attempt.Failures.OfType<NeverMet>().DistinctBy(failure => (object?)failure.Need.Declared ?? failure.Need).Select(At);

    private static Finding At(NeverMet failure)
    {
        var message = $"{ItemPhrases.Written(failure.Step)} needs {NeedPhrases.Wanted(failure.Need)}, which is never so in the refit";
        var related = new LabeledSpan(failure.Need.Declared?.Declared ?? failure.Need.Item.Declared, $"needs {NeedPhrases.Wanted(failure.Need)}");
        return RefitFinding.At(Id, failure.Step, message, "its inverse cannot be performed", related) with
        {
            Help = $"bring it about in the strip, so that the refit begins with {NeedPhrases.Wanted(failure.Need)}",
        };
    }
}
