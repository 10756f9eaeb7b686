using ProcScript.Analysis.Fluids;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What cards say of the charge of a fluid.</summary>
internal static class FluidWords
{
    /// <summary>What a new part changes: <c>0.1 L less with the new heating element</c>.</summary>
    public static string Of(BroughtChange brought)
    {
        var change = brought.Change;
        var amount = change.Supply is { } supply ? $"{change.Amount.Print()} of {supply.Title}" : change.Amount.Print();
        var direction = (change.Adds, change.Supply) switch
        {
            (true, null) => " more",
            (true, _) => "",
            _ => " less",
        };
        return $"{amount}{direction} with the new {change.Part.Title}";
    }

    /// <summary>The least that has to come out of a refrigerant circuit; empty for other fluids, and where no charge is given.</summary>
    public static string LeastRecovered(Fluid fluid)
    {
        if (fluid.Charge is not { } charge || !IsRefrigerant(fluid))
        {
            return "";
        }

        var least = charge.Nominal * RefrigerantService.LeastRecovered;
        return new Quantity(least, least, least, charge.Unit, QuantityForm.Plain).Print();
    }

    /// <summary>Whether it is marked as a refrigerant.</summary>
    public static bool IsRefrigerant(Fluid fluid) => fluid.Hazards.Contains(Hazard.Refrigerant);
}
