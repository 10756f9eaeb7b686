using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Quantities;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Quantities;

/// <summary>A figure without a unit.</summary>
public sealed class MissingUnit : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1203", "missing-unit", "A figure without a unit", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A property that is measured has a bare number.",
        Why: "22 N·m and 22 lbf·ft differ by a third. A number alone gets read in the unit of whoever holds the wrench.",
        Wrong: """
            tool wrench "torque wrench"
            fastener m8 "M8 bolt" { drive wrench  torque 22 }
            """,
        Right: """
            tool wrench "torque wrench"
            fastener m8 "M8 bolt" { drive wrench  torque 22 N.m }
            """);

    internal static Finding At(QuantityDemand demand, SourceSpan place) =>
        new(Id, $"`{demand.Word}` takes {demand.Words}, and this number has no unit", place)
        {
            Help = Choices(demand),
        };

    /// <summary>The units that the property takes.</summary>
    internal static string Choices(QuantityDemand demand)
    {
        const int Few = 6;
        Dimension[] dimensions = [.. demand.Dimensions.Where(one => one != Dimension.Count)];
        var units = dimensions.SelectMany(one => Units.Of(one).Take(Few / dimensions.Length));
        return $"write it in {WordList.OrNames(units.Select(Units.SpellingOf))}";
    }
}
