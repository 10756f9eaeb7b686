using System.Globalization;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Jobs.Tests;

/// <summary>A reading that is as it must be.</summary>
internal static class GoodReading
{
    public static string Of(Limit? limit) => limit is null ? "seen" : $"{Value(limit).ToString("0.######", CultureInfo.InvariantCulture)} {limit.Quantity.Unit.Symbol}";

    private static double Value(Limit limit) => limit.Relation switch
    {
        LimitRelation.Less => limit.Quantity.High - Math.Max(1, Math.Abs(limit.Quantity.High)) / 100,
        LimitRelation.More => limit.Quantity.Low + Math.Max(1, Math.Abs(limit.Quantity.Low)) / 100,
        LimitRelation.AtMost => limit.Quantity.High,
        LimitRelation.AtLeast => limit.Quantity.Low,
        _ => (limit.Quantity.Low + limit.Quantity.High) / 2,
    };
}
