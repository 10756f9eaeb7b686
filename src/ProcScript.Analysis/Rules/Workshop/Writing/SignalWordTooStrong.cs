using System.Text.RegularExpressions;
using ProcScript.Analysis.Prose;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>An alert about damage under a word for injuries, or about what may kill under the word for what will.</summary>
public sealed class SignalWordTooStrong : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5105", "signal-word-too-strong", "A signal word above what its text tells of", Severity.Hint)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A danger, a warning or a caution tells of damage and has not a word about people, or a danger tells of what can kill, not of what will. "
            + "The words follow ANSI Z535: damage alone is a notice. Military manuals use `caution` for damage; this language does not.",
        Why: "A word that is used for everything is soon read by nobody. Danger is kept for the most extreme cases.",
        Wrong: """
            machine press "Press" {
              part guard "guard" {
                caution "A steel brush scratches the coating. Take the nylon one."
              }
            }
            """,
        Right: """
            machine press "Press" {
              part guard "guard" {
                notice "A steel brush scratches the coating. Take the nylon one."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file)
    {
        foreach (var text in file.Texts)
        {
            if (text.Alert is { Keyword: var keyword } alert && Fitting(AlertMeaning.WordOf(alert), text.Value) is { } fitting)
            {
                var (word, said, why) = fitting;
                yield return new Finding(
                    Id,
                    $"\"{said.Value}\" under the word `{keyword.Text}`: {why}",
                    new SourceSpan(file.Text.Path, keyword.Span),
                    $"too strong: a {word}")
                {
                    Related = [new LabeledSpan(text.Place(said.Index, said.Index + said.Length), "what happens")],
                    Help = $"write `{word}`, or say who is hurt and how",
                    Fixes = [new Fix($"Write `{word}`", FixGrade.NeedsLook, [new TextEdit(new SourceSpan(file.Text.Path, keyword.Span), word)])],
                };
            }
        }
    }

    private static (string Word, Match Said, string Why)? Fitting(SignalWord word, string text) => word switch
    {
        _ when word.IsOfInjury() && AlertMeaning.DamageOnly(text) is { } damage => ("notice", damage, "nobody is hurt by it"),
        SignalWord.Danger when AlertMeaning.MayKill(text) is { } may => ("warning", may, "danger is for what will kill"),
        _ => null,
    };
}
