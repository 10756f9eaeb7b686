using ProcScript.Model.Binding.Places;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Rules.Quantities;

/// <summary>A range whose lower end lies above its upper end.</summary>
public sealed class UpsideDownRange : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC1204", "upside-down-range", "A range that begins above its end", Severity.Error) { Fix = FixAvailability.Sometimes };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The first number of a range is greater than the second, or a tolerance is negative.",
        Why: "No reading can be right then, so every reading would be taken for a fault.",
        Wrong: """
            machine cab "cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                verify "Measure at the lamp." expect 0.5 .. 0 V
                restore "Refit the negative cable."
              }
            }
            """,
        Right: """
            machine cab "cab" {
              energy battery "12 V battery" {
                isolate "Take the negative cable off."
                verify "Measure at the lamp." expect 0 .. 0.5 V
                restore "Refit the negative cable."
              }
            }
            """);

    internal static Finding At(Quantity quantity, QuantitySyntax syntax, BindingPlace place)
    {
        var span = place.At(syntax.Span);
        if (quantity.Form == QuantityForm.PlusMinus)
        {
            return new Finding(Id, "the tolerance is negative", span) { Help = "write the tolerance without its sign" };
        }

        var text = place.File.Tree.Text;
        var isOneUnit = syntax.FirstUnit is null || syntax.SecondUnit is null || syntax.FirstUnit.Text == syntax.SecondUnit.Text;
        return new Finding(Id, "the range begins above its end", span)
        {
            Help = "write the smaller number first",
            Fixes = isOneUnit && syntax.Second is { } second
                ? [new Fix(
                    "Swap the two numbers",
                    FixGrade.NeedsLook,
                    [
                        new TextEdit(place.At(syntax.First.Span), text.Slice(second.Span)),
                        new TextEdit(place.At(second.Span), text.Slice(syntax.First.Span)),
                    ])]
                : [],
        };
    }
}
