using ProcScript.Analysis.Whole;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.WholeLibrary;

/// <summary>Joints, energies or options of a machine are met by no procedure.</summary>
public sealed class NotExercised : MachineFamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC6005", "not-exercised", "A machine of which no procedure tries a part", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "No proven procedure opens some joints of a machine, fits some temporary parts, isolates some energies, or runs with and without some "
            + "option that the machine has. It is told once a machine. Where a procedure on it is not proven, nothing is "
            + "said.",
        Why: "What no procedure meets is proven by nobody: whether it can be got at, whether it goes back, whether the "
            + "option makes a difference. Where no work is planned there, allow it and say so.",
        Wrong: """
            // file: procscript.json
            {}
            // file: press.proc
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part shelf "shelf" { held by 2 pin as shelf_pins }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
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

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part shelf "shelf" { held by 2 pin as shelf_pins }
            }

            procedure guard_off "Take the guard off" on press {

              goal remove guard
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }

            procedure shelf_off "Take the shelf off" on press {

              goal remove shelf
              stage "Shelf" {
                release shelf_pins
                remove shelf
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(LibraryView view, MachineFamily family)
    {
        if (!view.IsLive(family.Declared.Path) || family.Traces.IsEmpty || !family.Traces.All(one => one.IsProven))
        {
            yield break;
        }

        var missed = Missed([.. family.Variants], [.. family.Traces]).ToList();
        if (missed.Count > 0)
        {
            yield return new Finding(Id, $"no procedure on the {family.Variants[0].Title} {Either(missed)}", family.Declared, "has what no procedure meets")
            {
                Help = "write a procedure that meets it, or allow it and say why none is needed",
            };
        }
    }

    private static IEnumerable<string> Missed(List<Model.Machines.Machine> variants, List<ProcedureTraces> traces)
    {
        var met = traces.SelectMany(one => one.Met).ToHashSet(StringComparer.Ordinal);
        var with = traces.SelectMany(one => one.Procedure.Machine.With).Select(option => option.Name).ToHashSet(StringComparer.Ordinal);
        var joints = Names(variants.SelectMany(machine => machine.Joints), met);
        var temporary = Names(variants.SelectMany(machine => machine.Parts).Where(part => part.IsTemporary), met);
        var energies = Names(variants.SelectMany(machine => machine.Energies), met);
        var options = variants[0].Options.Select(option => option.Name).Where(name => !with.Contains(name)).ToList();
        return new[] { Words("opens", joints), Words("fits", temporary), Words("isolates", energies), Words("depends on", options) }.OfType<string>();
    }

    private static string Either(List<string> missed) =>
        missed.Count == 1 ? missed[0] : $"{string.Join(", ", missed.SkipLast(1))} or {missed[^1]}";

    private static List<string> Names(IEnumerable<MachineItem> items, HashSet<string> met) =>
        [.. items.Select(item => item.Name).Where(name => !met.Contains(name)).Distinct(StringComparer.Ordinal)];

    private static string? Words(string verb, List<string> names) =>
        names.Count == 0 ? null : $"{verb} {ItemPhrases.List(names.Select(name => $"`{name}`"))}";
}
