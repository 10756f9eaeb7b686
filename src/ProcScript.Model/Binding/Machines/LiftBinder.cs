using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds how a part is lifted.</summary>
internal static class LiftBinder
{
    /// <summary>The lift with what the property says of it; null where the property says something else.</summary>
    public static LiftGeometry? With(LiftGeometry lift, PropertySyntax property, BindingPlace place, FindingSink sink) => property switch
    {
        ChoicePropertySyntax { Keyword.Text: "grip" } grip => lift with { Grip = Grip(grip.Choice.Text) },
        QuantityPropertySyntax quantity => quantity.Keyword.Text switch
        {
            "reach" => lift with { Reach = Bind(quantity, place, sink) },
            "height" => lift with { Height = Bind(quantity, place, sink) },
            "twist" => lift with { Twist = Bind(quantity, place, sink) },
            "frequency" => lift with { Frequency = Bind(quantity, place, sink) },
            _ => null,
        },
        _ => null,
    };

    private static Quantity? Bind(QuantityPropertySyntax property, BindingPlace place, FindingSink sink) =>
        QuantityBinder.Bind(property.Quantity, QuantityDemand.Of(property.Keyword.Text), place, sink);

    private static LiftGrip? Grip(string word) => word switch
    {
        "good" => LiftGrip.Good,
        "fair" => LiftGrip.Fair,
        "poor" => LiftGrip.Poor,
        _ => null,
    };
}
