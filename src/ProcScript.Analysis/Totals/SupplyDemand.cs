using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Totals;

/// <summary>What a step takes from the shelf.</summary>
/// <param name="Supply">What.</param>
/// <param name="Amount">How much in all.</param>
/// <param name="IsPiece">Whether it is a new part by the piece, such as a seal.</param>
internal readonly record struct SupplyDemand(Supply Supply, Quantity Amount, bool IsPiece)
{
    /// <summary>
    /// What <paramref name="step"/> takes: what its block says; and when it puts something back, what the item takes (of a joint for each
    /// piece), the supplies of its kind among it, and what goes in along with a new part.
    /// </summary>
    public static IEnumerable<SupplyDemand> Of(PlannedStep step)
    {
        var item = step switch
        {
            { Closes: true, Joint: { } joint } => joint.Kind.Uses.Concat(joint.Uses).Select(use => Times(use, step.Count)),
            { Verb: Verb.Fit or Verb.Fill or Verb.Restore, Target: { } target } => target.Uses.Select(use => Times(use, 1)),
            _ => [],
        };
        var brought = step.Verb == Verb.Fit ? step.Brings.Where(brought => brought.Change is { Adds: true, Supply: not null }) : [];
        return item.Concat(brought.Select(brought => new SupplyDemand(brought.Change.Supply!, brought.Change.Amount, false))).Concat(step.Details.Uses.Select(use => Times(use, 1)));
    }

    /// <summary>The seals and other pieces that come off with the joint and are scrap.</summary>
    public static IEnumerable<SupplyDemand> Spent(Joint joint, int count) =>
        joint.Kind.Uses.Concat(joint.Uses).Select(use => Times(use, count)).Where(demand => demand.IsPiece);

    private static SupplyDemand Times(SupplyUse use, int count)
    {
        var (amount, isCount) = (use.Amount, use.Amount.Unit.Dimension == Dimension.Count);
        return new SupplyDemand(
            use.Supply,
            amount with { Nominal = amount.Nominal * count, Low = amount.Low * count, High = amount.High * count },
            isCount && (use.IsSeal || use.Supply.SingleUse));
    }
}
