using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Totals;

/// <summary>What is used up by amount, added up for each supply.</summary>
internal static class ConsumableList
{
    /// <summary>
    /// In the order of first use, what the job as a whole uses up first. Amounts of one supply are added in the unit met first; where
    /// one is measured by mass and another by volume, each has its own line.
    /// </summary>
    public static ImmutableArray<PlanConsumable> Of(ImmutableArray<PlannedStep> steps, ActionDetails job, Wordbook book) =>
    [
        .. job.Uses.Select(use => (Demand: new SupplyDemand(use.Supply, use.Amount, false), Step: 0))
            .Concat(steps.SelectMany(step => SupplyDemand.Of(step)
                .Where(demand => !demand.IsPiece)
                .Select(demand => (Demand: demand, Step: step.Number))))
            .GroupBy(use => (use.Demand.Supply.Name, use.Demand.Amount.Unit.Dimension))
            .Select(supply => new PlanConsumable(
                supply.First().Demand.Supply.Title,
                Words(supply.Select(use => use.Demand.Amount).Aggregate(Add), book),
                [.. supply.Select(use => use.Step).Where(step => step > 0).Distinct()])),
    ];

    /// <summary>An amount, as a card prints it.</summary>
    public static string Words(Quantity amount, Wordbook book) =>
        amount.Unit.Dimension == Dimension.Count ? book.Say("amount.pieces", ("amount", book.Print(amount)), ("count", amount.High)) : book.Print(amount);

    private static Quantity Add(Quantity sum, Quantity next)
    {
        var other = next.In(sum.Unit);
        return sum with
        {
            Nominal = sum.Nominal + other.Nominal,
            Low = sum.Low + other.Low,
            High = sum.High + other.High,
            Form = sum.Form == other.Form ? sum.Form : Syntax.Nodes.QuantityForm.Range,
        };
    }
}
