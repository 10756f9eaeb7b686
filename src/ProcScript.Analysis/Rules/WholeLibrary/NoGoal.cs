using ProcScript.Analysis.Whole;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Rules.WholeLibrary;

/// <summary>A procedure has no goal, and no other one calls it.</summary>
public sealed class NoGoal : MachineFamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC6007", "no-goal", "A procedure without a goal that nothing calls", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure has no `goal`, and no `do` of the library calls it.",
        Why: "Without a goal nobody can tell whether a step is missing or not needed, nor whether the job is done. A procedure that is called is a "
            + "fragment and needs none.",
        Wrong: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"

            machine press "Press" { part guard "guard" { held by 4 pin as guard_pins } }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """,
        Right: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"

            machine press "Press" { part guard "guard" { held by 4 pin as guard_pins } }

            procedure guard_off "Take the guard off" on press {
              goal remove guard
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(LibraryView view, MachineFamily family)
    {
        var without = family.Traces.Select(trace => trace.Procedure).GroupBy(procedure => procedure.Declared)
            .Where(variants => variants.All(procedure => procedure.Goals.IsEmpty)).Select(variants => variants.First()).ToList();
        if (without.Count == 0)
        {
            return [];
        }

        var called = view.Procedures
            .SelectMany(procedure => procedure.DescendantsAndSelf().OfType<DoSyntax>())
            .Select(call => call.Procedure.Text)
            .ToHashSet(StringComparer.Ordinal);
        return
            from procedure in without
            where !called.Contains(procedure.Name)
            select new Finding(Id, $"`{procedure.Name}` has no goal, and no procedure calls it", procedure.Declared, "what is it for?")
            {
                Help = "write `goal` and what it is for, such as `goal remove` and the part",
            };
    }
}
