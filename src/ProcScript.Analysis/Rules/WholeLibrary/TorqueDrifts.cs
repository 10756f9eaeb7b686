using ProcScript.Analysis.Whole;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.WholeLibrary;

/// <summary>One joint is tightened otherwise in another procedure.</summary>
public sealed class TorqueDrifts : MachineFamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC6003", "torque-drifts", "One joint is tightened otherwise in another procedure", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Two procedures put the same joint back with different torques: the action of one of them says a torque, and "
            + "the other says another, or leaves it to the joint or its kind. Where the joint has a torque of its own, "
            + "`torque-given-twice` speaks of it.",
        Why: "The bolts do not know for which job they came off. One of the two figures was changed and the other one "
            + "forgotten.",
        Wrong: """
            // file: procscript.json
            {}
            // file: press.proc
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener bolt "cover bolt" { drive socket_13  torque 20 N.m }

            machine press "Press" {
              part guard "guard" { held by 4 bolt as guard_bolts }
              part shelf "shelf" { behind guard }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                undo guard_bolts { refit { torque 15 N.m } }
                remove guard
              }
            }

            procedure shelf_out "Take the shelf out" on press {

              goal remove shelf
              stage "Shelf" {
                undo guard_bolts { refit { torque 12 N.m } }
                remove guard
                remove shelf
              }
            }
            """,
        Right: """
            // file: procscript.json
            {}
            // file: press.proc
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener bolt "cover bolt" { drive socket_13  torque 20 N.m }

            machine press "Press" {
              part guard "guard" { held by 4 bolt as guard_bolts }
              part shelf "shelf" { behind guard }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                undo guard_bolts { refit { torque 15 N.m } }
                remove guard
              }
            }

            procedure shelf_out "Take the shelf out" on press {

              goal remove shelf
              stage "Shelf" {
                undo guard_bolts { refit { torque 15 N.m } }
                remove guard
                remove shelf
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(LibraryView view, MachineFamily family) =>
        from traces in family.Traces
        from tightened in traces.Tightened
        group tightened by tightened.Joint.Name into same
        let ways = same.DistinctBy(one => one.Key).ToList()
        where ways.Count > 1 && ways.DistinctBy(one => one.Procedure.Declared).Count() > 1
        // The first that says a torque of its own is held against the first that is otherwise.
        let odd = ways.FirstOrDefault(one => one.IsItsOwn && one != ways[0]) ?? ways[0]
        select At(odd, ways.First(one => one.Key != odd.Key));

    private static Finding At(TightenedJoint odd, TightenedJoint other) =>
        new(
            Id,
            $"`{odd.Joint.Name}` is tightened to {odd.Torque.Print()} by `{odd.Procedure.Name}` and to {other.Torque.Print()} by `{other.Procedure.Name}`",
            odd.Place,
            $"{odd.Torque.Print()} here")
        {
            Related = [new LabeledSpan(other.Place, $"{other.Torque.Print()} here")],
            Help = "write at the joint what the maker's data has, and take it out of the actions",
        };
}
