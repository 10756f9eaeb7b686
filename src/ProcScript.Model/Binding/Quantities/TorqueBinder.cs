using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Quantities;

/// <summary>Binds how tight a fastener is.</summary>
internal static class TorqueBinder
{
    /// <summary>The order of tightening.</summary>
    public static TighteningPattern? Pattern(ChoicePropertySyntax pattern) => pattern.Choice.Text switch
    {
        "star" => TighteningPattern.Star,
        "inside out" => TighteningPattern.InsideOut,
        "listed" => TighteningPattern.Listed,
        "none" => TighteningPattern.None,
        _ => null,
    };

    /// <summary>The torque that it takes to run a self-locking fastener on, or null with a finding. A plain figure is the least.</summary>
    public static Limit? Prevailing(LimitPropertySyntax property, BindingPlace place, FindingSink sink) =>
        QuantityBinder.Bind(property.Limit.Quantity, QuantityDemand.Of(property.Keyword.Text), place, sink) is { } quantity
            ? new Limit(property.Limit.Relation == LimitRelation.Within && quantity.Form == QuantityForm.Plain ? LimitRelation.AtLeast : property.Limit.Relation, quantity)
            : null;

    /// <summary>The stages and angles meant, or null with a finding.</summary>
    public static TighteningTorque? Bind(TorquePropertySyntax torque, BindingPlace place, FindingSink sink)
    {
        // One unit at the end serves all stages: "torque 20, 40 N.m".
        var last = torque.Stages[^1];
        var unit = last.SecondUnit ?? last.FirstUnit;
        var stages = Bind(
            torque.Stages.Select(stage => stage is { FirstUnit: null, SecondUnit: null } ? stage with { FirstUnit = unit } : stage),
            QuantityDemand.Of("torque"),
            place,
            sink);
        var angles = Bind(torque.Angles, QuantityDemand.TorqueAngle, place, sink);
        return stages.Length == torque.Stages.Length && angles.Length == torque.Angles.Length ? new TighteningTorque(stages, angles) : null;
    }

    private static ImmutableArray<Quantity> Bind(
        IEnumerable<QuantitySyntax> quantities, QuantityDemand demand, BindingPlace place, FindingSink sink) =>
        [.. quantities.Select(quantity => QuantityBinder.Bind(quantity, demand, place, sink)).OfType<Quantity>()];
}
