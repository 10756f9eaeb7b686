using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Quantities;
using ProcScript.Model.Rules.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Quantities;

/// <summary>Gives quantities as written their units and checks them against what their place asks.</summary>
internal static class QuantityBinder
{
    /// <summary>The quantity meant, or null with a finding.</summary>
    public static Quantity? Bind(QuantitySyntax syntax, QuantityDemand demand, BindingPlace place, FindingSink sink)
    {
        if (syntax.First.Span.Length == 0 || place.File.HasSyntaxErrorsIn(syntax.Span))
        {
            sink.Poison();
            return null;
        }

        var first = Find(syntax.FirstUnit, demand, place, sink);
        var second = Find(syntax.SecondUnit, demand, place, sink);
        if ((syntax.FirstUnit is not null && first is null) || (syntax.SecondUnit is not null && second is null))
        {
            return null;
        }

        var unit = first ?? second ?? Units.Piece;
        if (!demand.Dimensions.IsEmpty && !demand.Dimensions.Contains(unit.Dimension))
        {
            sink.Report(
                unit == Units.Piece
                    ? MissingUnit.At(demand, place.At(syntax.Span), UsedUnits.Around(syntax.Span, place))
                    : WrongDimension.At(demand, unit, place.At(syntax.Span)),
                place);
            return null;
        }

        var isShare = syntax.Form == QuantityForm.PlusMinus && second == Units.Percent && unit != Units.Percent;
        if (second is not null && second.Dimension != unit.Dimension && !isShare)
        {
            sink.Report(WrongDimension.Between(unit, second, place.At(syntax.Span)), place);
            return null;
        }

        return Checked(Read(syntax, unit, second, isShare), syntax, demand, place, sink);
    }

    /// <summary>The limit meant, or null with a finding.</summary>
    public static Limit? Bind(LimitSyntax? syntax, BindingPlace place, FindingSink sink) =>
        syntax is not null && Bind(syntax.Quantity, QuantityDemand.Expect, place, sink) is { } quantity
            ? new Limit(syntax.Relation, quantity)
            : null;

    private static Unit? Find(UnitSyntax? syntax, QuantityDemand demand, BindingPlace place, FindingSink sink)
    {
        if (syntax is null || Units.Find(syntax.Text) is { } unit)
        {
            return syntax is null ? null : Units.Find(syntax.Text);
        }

        sink.Report(UnknownUnit.At(syntax.Text, UnitGuess.For(syntax.Text, demand, sink), place.At(syntax.Span)), place);
        return null;
    }

    private static Quantity Read(QuantitySyntax syntax, Unit unit, Unit? second, bool isShare)
    {
        var value = syntax.First.Value;
        if (syntax.Second is null)
        {
            return new Quantity(value, value, value, unit, QuantityForm.Plain);
        }

        var other = second is null || second == unit || isShare
            ? syntax.Second.Value
            : InUnit(syntax.Second.Value, second, unit, syntax.Form);
        if (syntax.Form == QuantityForm.Range)
        {
            return new Quantity((value + other) / 2, value, other, unit, QuantityForm.Range);
        }

        var tolerance = isShare ? Math.Abs(value) * other / 100 : other;
        return new Quantity(value, value - tolerance, value + tolerance, unit, QuantityForm.PlusMinus);
    }

    /// <summary>A value in another unit; a tolerance is a difference and knows no zero point.</summary>
    private static double InUnit(double value, Unit from, Unit to, QuantityForm form) => form == QuantityForm.PlusMinus
        ? value * from.Factor / to.Factor
        : new Quantity(value, value, value, from, form).In(to).Nominal;

    private static Quantity? Checked(Quantity quantity, QuantitySyntax syntax, QuantityDemand demand, BindingPlace place, FindingSink sink)
    {
        if (quantity.Low > quantity.High && demand.MayFall && quantity.Form == QuantityForm.Range)
        {
            quantity = quantity with { Low = quantity.High, High = quantity.Low };
        }

        if (quantity.Low > quantity.High)
        {
            sink.Report(UpsideDownRange.At(quantity, syntax, place), place);
            return null;
        }

        var least = quantity.Unit.Dimension == Dimension.Temperature ? Math.Max(0, demand.Least) : demand.Least;
        var isLeastAllowed = demand.IsLeastAllowed || quantity.Unit.Dimension == Dimension.Temperature;
        var low = (quantity.Low * quantity.Unit.Factor) + quantity.Unit.Offset;
        var high = (quantity.High * quantity.Unit.Factor) + quantity.Unit.Offset;
        // A range may begin at zero and not end there; anything else may not even begin there.
        var lowest = quantity.Form == QuantityForm.Range ? high : low;
        if (!double.IsFinite(high) || low < least || high > demand.Most || (lowest == least && !isLeastAllowed))
        {
            sink.Report(ImpossibleQuantity.At(quantity, demand, place.At(syntax.Span)), place);
            return null;
        }

        return quantity;
    }
}
