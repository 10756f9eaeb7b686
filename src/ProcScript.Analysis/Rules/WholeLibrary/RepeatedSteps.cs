using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Whole;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.WholeLibrary;

/// <summary>The same steps stand in several procedures of a machine.</summary>
public sealed class RepeatedSteps : MachineFamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC6004", "repeated-steps", "Steps that stand in several procedures", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Two procedures of a machine have at least six steps (`limits.repeatedSteps`) in the same order, one after the "
            + "other. How they are done may be said otherwise. A longer stretch is told once, at the later procedure, against "
            + "the first that has it; what `do` brings does not count.",
        Why: "What is put right in one of them stays wrong in the other. A procedure of its own, brought in with `do`, is "
            + "written, proven and kept up once.",
        Wrong: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"

            machine press "Press" {
              part hood "hood" { held by 2 pin as hood_pins }
              part guard "guard" { held by 2 pin as guard_pins  behind hood }
              part shelf "shelf" { held by 2 pin as shelf_pins  behind guard }
              part tray "tray" { held by 2 pin as tray_pins  behind shelf }
              part fan "fan" { held by 2 pin as fan_pins  behind shelf }
            }

            procedure tray_out "Take the tray out" on press {

              goal remove tray
              stage "tray" {
                release hood_pins
                remove hood
                release guard_pins
                remove guard
                release shelf_pins
                remove shelf
                release tray_pins
                remove tray
              }
            }

            procedure fan_out "Take the fan out" on press {

              goal remove fan
              stage "fan" {
                release hood_pins
                remove hood
                release guard_pins
                remove guard
                release shelf_pins
                remove shelf
                release fan_pins
                remove fan
              }
            }
            """,
        Right: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"

            machine press "Press" {
              part hood "hood" { held by 2 pin as hood_pins }
              part guard "guard" { held by 2 pin as guard_pins  behind hood }
              part shelf "shelf" { held by 2 pin as shelf_pins  behind guard }
              part tray "tray" { held by 2 pin as tray_pins  behind shelf }
              part fan "fan" { held by 2 pin as fan_pins  behind shelf }
            }

            procedure shelf_out "Take the shelf out" on press {

              goal remove shelf
              stage "shelf" {
                release hood_pins
                remove hood
                release guard_pins
                remove guard
                release shelf_pins
                remove shelf
              }
            }

            procedure tray_out "Take the tray out" on press {

              goal remove tray
              do shelf_out
              stage "tray" {
                release tray_pins
                remove tray
              }
            }

            procedure fan_out "Take the fan out" on press {

              goal remove fan
              do shelf_out
              stage "fan" {
                release fan_pins
                remove fan
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(LibraryView view, MachineFamily family) =>
        from repeat in StepRepeats.Among(
            family.Traces.Select(one => one.Procedure).Where(procedure => !procedure.HasErrors).DistinctBy(procedure => procedure.Declared),
            view.Settings.Get(SettingsTable.RepeatedSteps))
        group repeat by (repeat.Earlier.Declared, repeat.EarlierFirst.Source, repeat.Length) into same
        select At([.. same]);

    private static Finding At(List<StepRepeat> same)
    {
        var first = same[0];
        return new Finding(
            Id,
            $"{first.Length} steps of `{first.Procedure.Name}` stand in {Others(same)} too",
            first.First.Source,
            $"from here on, {first.Length} steps")
        {
            Related =
            [
                new LabeledSpan(first.EarlierFirst.Source, $"the same in `{first.Earlier.Name}`"),
                .. same.Skip(1).Select(repeat => new LabeledSpan(repeat.First.Source, $"the same in `{repeat.Procedure.Name}`")),
            ],
            Help = first.IsAllOfEarlier
                ? $"write `do {first.Earlier.Name}` in their place"
                : "make a procedure of them, and write `do` with its name in their places",
        };
    }

    private static string Others(List<StepRepeat> same) =>
        ItemPhrases.List(same.Skip(1).Select(repeat => $"`{repeat.Procedure.Name}`").Prepend($"`{same[0].Earlier.Name}`"));
}
