using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What cards say of the charge of a fluid.</summary>
internal static class FluidWords
{
    /// <summary>What a new part changes: <c>0.1 L less with the new heating element</c>.</summary>
    public static string Of(BroughtChange brought, Wordbook book)
    {
        var change = brought.Change;
        var amount = change.Supply is { } supply
            ? book.Say("amount.of", ("amount", book.Print(change.Amount)), ("what", supply.Title))
            : book.Print(change.Amount);
        return (change.Adds, change.Supply) switch
        {
            (true, null) => book.Say("fluid.more", ("amount", amount), ("part", change.Part.Title)),
            (true, _) => book.Say("fluid.with", ("amount", amount), ("part", change.Part.Title)),
            _ => book.Say("fluid.less", ("amount", amount), ("part", change.Part.Title)),
        };
    }

    /// <summary>The least that has to come out of a refrigerant circuit; empty for other fluids, and where no charge is given.</summary>
    public static string LeastRecovered(Fluid fluid, Wordbook book)
    {
        if (fluid.Charge is not { } charge || !IsRefrigerant(fluid))
        {
            return "";
        }

        var least = charge.Nominal * RefrigerantService.LeastRecovered;
        return book.Print(new Quantity(least, least, least, charge.Unit, QuantityForm.Plain));
    }

    /// <summary>Whether it is marked as a refrigerant.</summary>
    public static bool IsRefrigerant(Fluid fluid) => fluid.Hazards.Contains(Hazard.Refrigerant);
}
