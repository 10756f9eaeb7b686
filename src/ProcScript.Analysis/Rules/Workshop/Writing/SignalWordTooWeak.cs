using ProcScript.Analysis.Prose;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Writing;

/// <summary>An alert tells of an injury that its signal word denies.</summary>
public sealed class SignalWordTooWeak : ProseRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5104", "signal-word-too-weak", "A signal word below what its text tells of", Severity.Warning)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A notice tells that somebody is hurt, a notice or a caution that somebody is killed or badly hurt, or a warning that somebody will be "
            + "killed. The words follow ANSI Z535: danger will kill or badly injure, warning could, caution could injure slightly, notice speaks of damage.",
        Why: "Who works by the signal words looks up at a warning and reads past a notice. It is a warning because the text itself says that people are hurt.",
        Wrong: """
            machine press "Press" {
              energy mains "mains" {
                notice  "A live terminal can give an electric shock. Pull the plug first."
                isolate "Pull the plug."
                restore "Put the plug in."
              }
            }
            """,
        Right: """
            machine press "Press" {
              energy mains "mains" {
                warning "A live terminal can give an electric shock. Pull the plug first."
                isolate "Pull the plug."
                restore "Put the plug in."
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(FileProse file)
    {
        foreach (var text in file.Texts)
        {
            if (text.Alert is { } alert
                && AlertMeaning.Least(text.Value) is { } least
                && AlertMeaning.WordOf(alert) is var given
                && least.Word < given)
            {
                var (word, asked) = (alert.Keyword.Text, Name(least.Word));
                yield return new Finding(
                    Id,
                    $"\"{least.Said.Value}\" under the word `{word}`, which {Means(given)}",
                    new SourceSpan(file.Text.Path, alert.Keyword.Span),
                    $"too weak: at least a {asked}")
                {
                    Related = [new LabeledSpan(text.Place(least.Said.Index, least.Said.Index + least.Said.Length), "what happens")],
                    Help = $"write `{asked}`, or a worse word where the injury is worse",
                    Fixes = [new Fix($"Write `{asked}`", FixGrade.NeedsLook, [new TextEdit(new SourceSpan(file.Text.Path, alert.Keyword.Span), asked)])],
                };
            }
        }
    }

    private static string Means(SignalWord word) => word switch
    {
        SignalWord.Notice => "says that nobody is hurt",
        SignalWord.Caution => "says that an injury is slight",
        _ => "says that it could happen, not that it will",
    };

    private static string Name(SignalWord word) => word.ToString().ToLowerInvariant();
}
