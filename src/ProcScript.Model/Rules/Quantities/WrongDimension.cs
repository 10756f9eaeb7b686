using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Quantities;

/// <summary>A unit of the wrong dimension.</summary>
public sealed class WrongDimension : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1202", "wrong-dimension", "A unit that measures something else", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The unit is known, and measures something else than the property asks for.",
        Why: "A torque in millimetres is a slip of the pen, and what was meant nobody can tell.",
        Wrong: """
            tool wrench "torque wrench"
            fastener m8 "M8 bolt" { drive wrench  torque 22 mm }
            """,
        Right: """
            tool wrench "torque wrench"
            fastener m8 "M8 bolt" { drive wrench  torque 22 N.m }
            """);

    /// <summary>Against what the property asks.</summary>
    internal static Finding At(QuantityDemand demand, Unit unit, SourceSpan place) =>
        new(Id, $"`{demand.Word}` takes {demand.Words}, and {Words(unit)}", place)
        {
            Help = MissingUnit.Choices(demand),
        };

    /// <summary>Of two units within one quantity.</summary>
    internal static Finding Between(Unit first, Unit second, SourceSpan place) =>
        new(Id, $"{Words(first)}, and {Words(second)}", place, "two dimensions in one quantity")
        {
            Help = $"write both in `{Units.SpellingOf(first)}`",
        };

    private static string Words(Unit unit) => $"`{Units.SpellingOf(unit)}` is {unit.Dimension.WithArticle()}";
}
