using ProcScript.Analysis.Naming;
using ProcScript.Analysis.Whole;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.WholeLibrary;

/// <summary>A name is not written as the shop writes such names.</summary>
public sealed class NameNotAsHouse : LibraryRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC6008", "name-not-as-house", "A name that is not written as the shop writes it", Severity.Hint)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The settings say how names of a sort are written (`names.machines`, `names.parts` and so on), and a name is written otherwise. Without such a "
            + "setting every name is right. The fix writes it anew in every file of the library; where the new name is taken, there is none.",
        Why: "Whoever types `seatBolts` where all else is called `seat_bolts` makes the next author guess, and completion sort them apart.",
        Wrong: """
            // file: procscript.json
            { "names": { "joints": "seat_bolts" } }
            // file: press.proc
            clip pin "push pin"

            machine press "Press" { part guard "guard" { held by 4 pin as guardPins } }

            procedure guard_off "Take the guard off" on press {
              goal remove guard
              stage "Guard" {
                release guardPins
                remove guard
              }
            }
            """,
        Right: """
            // file: procscript.json
            { "names": { "joints": "seat_bolts" } }
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
    internal override IEnumerable<Finding> Check(LibraryView view)
    {
        if (!ShopNaming.IsChosenIn(view.Settings))
        {
            return [];
        }

        ShopNaming naming = new(view.Everything, view.Settings);
        return
            from misnomer in naming.Misnomers()
            let edits = naming.Rename(misnomer)
            select new Finding(Id, $"`{misnomer.Thing.Name}` is not how the shop writes the name of {misnomer.Sort}", misnomer.Place, $"would be `{misnomer.Wanted}`")
            {
                Help = edits is null ? $"choose another name: `{misnomer.Wanted}` is taken, is no name, or the settings know the old one" : $"rename it to `{misnomer.Wanted}`",
                Fixes = edits is { } all ? [new Fix($"Rename to `{misnomer.Wanted}`", FixGrade.NeedsLook, all)] : [],
            };
    }
}
