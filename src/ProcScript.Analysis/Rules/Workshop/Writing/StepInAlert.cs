using ProcScript.Analysis.Prose;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>A step of the work stands in an alert.</summary>
public sealed class StepInAlert : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5107", "step-in-alert", "A step that stands in an alert", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A sentence of an alert begins with a verb of the work itself: remove, undo, fit, tighten, disconnect, replace and their like.",
        Why: "A step in an alert is on no card, in no time and in no refit, and nobody proves that it can be done. An alert says how to keep out of "
            + "harm: wear, keep, let cool. Notes that give information and no instructions are a rule of simplified technical English (ASD-STE100, section 5); that "
            + "alerts hold no steps is one of military manuals (from memory).",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              goal remove guard
              stage "Guard" {
                notice "The lamp hangs on its wire. Remove the lamp first."
                release guard_pins
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part lamp "lamp"
              part guard "guard" { behind lamp  held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              goal remove guard
              stage "Guard" {
                notice "The lamp hangs on its wire and is easily torn off."
                remove lamp
                release guard_pins
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file) =>
        from text in file.Texts
        where text.Kind == ProseKind.Alert
        from sentence in text.Sentences
        let command = InstructionReader.Command(sentence)
        where command >= 0 && EnglishVerbs.IsWork(sentence.Words[command].Text)
        select new Finding(
            Id,
            $"a step stands in the {text.Alert!.Keyword.Text}: \"{sentence}\"",
            text.Place(sentence),
            "nobody plans or proves this step")
        {
            Help = "make it a step, or say what must be so instead of what is to be done",
        };
}
