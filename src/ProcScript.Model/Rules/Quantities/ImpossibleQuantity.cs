using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Quantities;

/// <summary>A quantity that nothing can have.</summary>
public sealed class ImpossibleQuantity : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1206", "impossible-quantity", "A quantity that nothing can have", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A mass, length, torque or time that is not above zero, a share above the whole, a temperature below absolute zero, or a "
            + "tolerance that reaches as far.",
        Why: "It is a slip of the pen, and totals made from it would be wrong without anybody noticing.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { mass -2 kg  held by 2 pin as trim_pins } }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" { part trim "trim" { mass 2 kg  held by 2 pin as trim_pins } }
            """);

    /// <summary>Against what its place allows.</summary>
    internal static Finding At(Quantity quantity, QuantityDemand demand, SourceSpan place)
    {
        var message = quantity.Unit.Dimension == Dimension.Temperature
            ? $"{quantity.Print()} reaches below absolute zero"
            : double.IsFinite(demand.Most) && quantity.Unit.Factor * quantity.High > demand.Most
                ? $"`{demand.Word}` cannot be more than the whole, and this is {quantity.Print()}"
                : $"`{demand.Word}` must {(demand.IsLeastAllowed ? "not be below" : "be above")} zero, and this is {quantity.Print()}";
        return new Finding(Id, message, place);
    }

    /// <summary>Of a fluid that is attended longer than it takes.</summary>
    internal static Finding AttendedTooLong(MachineItem fluid, Quantity attended, Quantity takes, SourceSpan place) =>
        new(Id, $"the {fluid.Title} takes {takes.Print()} and is attended for {attended.Print()} of it", place, "longer than the whole")
        {
            Help = "`attended` is the part of `takes` that somebody stands by",
        };
}
