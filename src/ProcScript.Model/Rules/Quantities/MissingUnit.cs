using System.Collections.Immutable;
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
    public static readonly RuleInfo Id = new("PRC1203", "missing-unit", "A figure without a unit", Severity.Error)
    {
        Fix = FixAvailability.Always,
    };

    /// <summary>How many units are offered; the help names the others.</summary>
    private const int MostOffered = 3;

    /// <summary>What most figures in a workshop are in.</summary>
    private static readonly ImmutableArray<string> Common = ["N.m", "lbf.ft", "lbf.in", "mm", "in", "kg", "g", "lb", "L", "mL", "qt", "bar", "psi", "s", "min", "h"];

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

    /// <param name="demand">What the property takes.</param>
    /// <param name="place">The number.</param>
    /// <param name="usual">Units in the order in which the file uses them.</param>
    internal static Finding At(QuantityDemand demand, SourceSpan place, IEnumerable<string> usual)
    {
        string[] known = [.. Known(demand)];
        return new Finding(Id, $"`{demand.Word}` takes {demand.Words}, and this number has no unit", place)
        {
            Help = Choices(demand),
            Fixes =
            [
                .. usual.Where(known.Contains).Concat(known.Where(Common.Contains)).Concat(known).Distinct(StringComparer.Ordinal).Take(MostOffered)
                    .Select(unit => new Fix($"Write `{unit}`", FixGrade.NeedsLook, [new TextEdit(place with { Span = new TextSpan(place.Span.End, 0) }, unit is "°" ? unit : " " + unit)])),
            ],
        };
    }

    /// <summary>The units that the property takes.</summary>
    internal static string Choices(QuantityDemand demand) => $"write it in {WordList.OrNames(Known(demand))}";

    private static IEnumerable<string> Known(QuantityDemand demand)
    {
        const int Few = 6;
        Dimension[] dimensions = [.. demand.Dimensions.Where(one => one != Dimension.Count)];
        return dimensions.SelectMany(one => Units.Of(one).Take(Few / dimensions.Length)).Select(Units.SpellingOf);
    }
}
