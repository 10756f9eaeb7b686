using ProcScript.Analysis.Whole;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.WholeLibrary;

/// <summary>A file has no procedure, and none uses it.</summary>
public sealed class DeadFile : LibraryRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC6006", "dead-file", "A file that no procedure needs", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A file declares something but no procedure, and no file with a procedure uses it, not even by way of others.",
        Why: "Nothing comes of it: no card is built from it, and no proof touches it. It is the old catalog that somebody "
            + "still corrects.",
        Wrong: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            // file: old.proc
            clip cap "snap-on cap"
            """,
        Right: """
            // file: procscript.json
            {}
            // file: press.proc
            use "caps.proc"

            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins covered by 4 cap as guard_caps }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                release guard_caps
                release guard_pins
                remove guard
              }
            }
            // file: caps.proc
            clip cap "snap-on cap"
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(LibraryView view) =>
        from first in view.Entries.DistinctBy(entry => entry.Path)

        // A library that is just begun has no procedure yet.
        where view.HasWork && !view.IsLive(first.Path)
        select new Finding(Id, $"no procedure needs `{first.Path}`", new SourceSpan(first.Path, first.Declaration.Name.Span), "used by no file with a procedure")
        {
            Help = "delete the file, or `use` it where it is needed",
        };
}
