using ProcScript.Analysis.Bags;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bags;

/// <summary>Two kinds of fastener fit, or start in, each other's holes and have the same title.</summary>
public sealed class LookAlikesInTitle : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5021",
        "look-alikes-with-one-title",
        "Fasteners that could be put to each other's holes read the same",
        Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Two kinds of fastener that come off in one job have the same thread and the same title, and differ in length, grade, coating or "
            + "head, or in oil or thread locker; or they have the same title and threads of which the one starts in the hole of the other (see "
            + "PRC5022), or that differ by their hand.",
        Why: "A card names a fastener by its title. Where two read the same, nobody can tell which one a step wants: a bolt that is too "
            + "long bottoms out and holds nothing, one that is too short strips its thread, and a softer one breaks.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener m8_short "M8 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
            fastener m8_long  "M8 bolt" { thread M8x1.25  length 40 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" {
              part guard "guard" {
                held by 4 m8_short as guard_bolts
                held by 2 m8_long as hinge_bolts
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts
                undo hinge_bolts
                remove guard
              }
            }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener m8_short "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
            fastener m8_long  "M8 × 40 bolt" { thread M8x1.25  length 40 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }

            machine press "Press" {
              part guard "guard" {
                held by 4 m8_short as guard_bolts
                held by 2 m8_long as hinge_bolts
              }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_bolts
                undo hinge_bolts
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        var firsts = new List<(string Title, Kind Kind)>();
        foreach (var kind in LooseHardware.Kinds(outcome.Strip!).Distinct())
        {
            var title = Reading(kind.Title);
            if (firsts.Find(one => one.Title.Equals(title, StringComparison.OrdinalIgnoreCase) && HardwareSort.AreLookAlikes(one.Kind, kind)).Kind is { } first)
            {
                yield return At(first, kind);
            }
            else
            {
                firsts.Add((title, kind));
            }
        }
    }

    /// <summary>A title as the eye takes it, but for its case: any run of blanks is one.</summary>
    private static string Reading(string title) => string.Join(' ', title.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static Finding At(Kind one, Kind other)
    {
        // In the order of the text, so that every job that has both says the same.
        var (first, second) = (string.CompareOrdinal(one.Declared.Path, other.Declared.Path), one.Declared.Span.Start - other.Declared.Span.Start) switch
        {
            ( > 0, _) or (0, > 0) => (other, one),
            _ => (one, other),
        };
        return new Finding(
            Id,
            $"`{first.Name}` and `{second.Name}` {HardwareSort.Fit(first, second)}, and both read \"{second.Title}\": "
                + ItemPhrases.List(HardwareSort.Differences(first, second).DefaultIfEmpty("they may differ in length")),
            second.Declared,
            "no card can tell this one apart")
        {
            Related = [new LabeledSpan(first.Declared, "from this one")],
            Help = HardwareSort.Hole(first) == HardwareSort.Hole(second) ? "put the length and the grade into the titles" : "put the threads into the titles",
        };
    }
}
