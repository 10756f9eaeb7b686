using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A word of the language stands where a name belongs.</summary>
public sealed class ReservedWordAsName : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1005", "reserved-word-as-name", "A word of the language used as a name", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A verb, or a word that holds a sentence together, is used as a name.",
        Why: "Where such a word begins a sentence of its own could not be told. Words such as `line`, `tool` or `clip` may be names.",
        Wrong: """
            machine pump "Pump" {
              part plug "drain plug" { mass 0.2 kg }
            }
            """,
        Right: """
            machine pump "Pump" {
              part drain_plug "drain plug" { mass 0.2 kg }
            }
            """);

    internal static Finding At(SourceText text, TextSpan word)
    {
        SourceSpan place = new(text.Path, word);
        var name = text.Slice(word) + "_1";
        return new Finding(Id, $"{Excerpt.Of(text, word)} is a word of the language and cannot be a name", place)
        {
            Help = $"call it something else, such as `{name}`, here and wherever it is named",
            Fixes = [new Fix($"Call it `{name}`", FixGrade.NeedsLook, [new TextEdit(place, name)])],
        };
    }
}
