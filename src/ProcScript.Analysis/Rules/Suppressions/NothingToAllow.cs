using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Suppressions;

/// <summary>A comment allows a finding that is not there.</summary>
public sealed class NothingToAllow : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7002", "nothing-to-allow", "A comment allows a finding that is not there", Severity.Warning)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `// proc: allow` comment names a rule that has nothing to say about the next line. It is quiet until all that the comment may "
            + "speak about is judged: the library is read whole, no text has an error, and every procedure that sees the file is proven.",
        Why: "A left-over exception hides the next mistake on that line. What it says may still be worth a comment of another sort, so that the "
            + "fix wants a look.",
        Wrong: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                // proc: allow PRC3001 because "It hangs on its wires."
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"
            connector plug_2 "2-way connector"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """);

    internal static Finding At(SourceSpan comment, string rule, SourceSpan line) =>
        new(Id, $"{rule} has nothing to say about the next line", comment)
        {
            Help = "take the comment out",
            Fixes = [new Fix("Take the comment out", FixGrade.NeedsLook, [new TextEdit(line, "")])],
        };
}
