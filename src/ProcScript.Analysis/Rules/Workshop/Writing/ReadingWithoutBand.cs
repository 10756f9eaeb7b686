using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Settings;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>A reading is taken, and nothing says which is right. Common practice, no source.</summary>
public sealed class ReadingWithoutBand : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5056", "reading-without-band", "A reading is taken, and nothing says which is right", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `measure` has no `expect` and no figure with a unit in its text. So has a `check` or a `verify` that names a unit, or, where the "
            + "shop writes English, begins with *measure* or *read*.",
        Why: "Whoever reads the meter writes a number down and goes on, whatever it is. It is a hint, for some readings are only kept for the next "
            + "time; a `task` says that better.",
        Wrong: """
            tool dial "dial gauge"
            machine saw "Saw" { part blade "blade" }

            procedure blade_look "Look at the blade" on saw {
              goal inspect blade
              work {
                inspect blade
                measure "Play of the blade at the rim" with dial
              }
            }
            """,
        Right: """
            tool dial "dial gauge"
            machine saw "Saw" { part blade "blade" }

            procedure blade_look "Look at the blade" on saw {
              goal inspect blade
              work {
                inspect blade
                measure "Play of the blade at the rim" with dial expect <= 0.2 mm
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from text in file.Texts
        where text is { Taken: not TakenBy.Nothing, HasLimit: false } && IsReading(text, file.Settings.Get(SettingsTable.Wording))
        select new Finding(Id, $"a reading is taken, and nothing says which is right: \"{text.Value}\"", text.Whole, "no `expect` follows")
        {
            Help = text.Taken == TakenBy.Measure
                ? "write `expect` and a limit or a range behind the text; where it is only kept for the record, make it a `task`"
                : "write `expect` and a limit or a range behind the text",
        };

    private static bool IsReading(ProseText text, WordingChoice wording) => text.Taken == TakenBy.Measure
        ? !ReadingWords.HasFigure(text.Value)
        : ReadingWords.BareUnit(text.Value) is not null
            || (wording == WordingChoice.English && ReadingWords.BeginsToMeasure(text.Value) && !ReadingWords.HasFigure(text.Value));
}
