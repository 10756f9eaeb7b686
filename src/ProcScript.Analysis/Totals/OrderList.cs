using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>What has to be at hand before the start: what goes in new, and spares for what breaks now and then.</summary>
internal static class OrderList
{
    /// <summary>In the order of first use, the spares after all that is sure to be needed.</summary>
    public static ImmutableArray<PlanOrderLine> Of(ImmutableArray<PlannedStep> steps) =>
        [.. Merge(steps.SelectMany(NewParts)), .. Spares(steps)];

    /// <summary>The new parts that go in with a step.</summary>
    public static IEnumerable<NewPart> NewParts(PlannedStep step)
    {
        if (step is { Verb: Verb.Fit, Fate: Fate.Renewed, Part: { } part })
        {
            yield return new NewPart(part.Title, 1, step.Book.Say("order.replaced"), step);
        }

        if (step is { Closes: true, Joint: { } joint })
        {
            if (ReasonForNew(step.Fate, joint) is { } reason)
            {
                yield return new NewPart(ItemWords.Of(joint.Kind, step.Book), step.Count, step.Book.Say(reason), step);
            }
            else if (step.Renewed > 0)
            {
                yield return new NewPart(ItemWords.Of(joint.Kind, step.Book), step.Renewed, step.Book.Say("order.replaced"), step);
            }
        }

        foreach (var demand in SupplyDemand.Of(step).Where(demand => demand.IsPiece))
        {
            yield return new NewPart(demand.Supply.Title, Whole(demand), step.Book.Say("order.single-use"), step);
        }
    }

    /// <summary>What comes off with a step and never goes back.</summary>
    public static IEnumerable<ScrappedPieces> Scrapped(PlannedStep step) => step switch
    {
        { Verb: Verb.Remove, Part: { } part } when step.Fate != Fate.GoesBack => [new ScrappedPieces(part.Title, 1, IsPart: true)],
        { Opens: true, Joint: { } joint } =>
        [
            .. (IsScrap(step.Fate, joint) ? step.Count : step.Renewed) is > 0 and var pieces
                ? [new ScrappedPieces(ItemWords.Of(joint.Kind, step.Book), pieces, IsPart: false)]
                : ImmutableArray<ScrappedPieces>.Empty,
            .. SupplyDemand.Spent(joint, step.Count).Select(demand => new ScrappedPieces(demand.Supply.Title, Whole(demand), IsPart: false)),
        ],
        _ => [],
    };

    /// <summary>Whether pieces of a joint never go back where they came from.</summary>
    public static bool IsScrap(Fate fate, Joint joint) => fate != Fate.GoesBack || joint.SingleUse;

    private static int Whole(SupplyDemand demand) => (int)Math.Ceiling(demand.Amount.High);

    /// <summary>The message that says why; null where nothing new goes in.</summary>
    private static string? ReasonForNew(Fate fate, Joint joint) => joint switch
    {
        // A bond is made of what its kind uses; only one that names nothing is a thing to order itself.
        { Kind: { Category: KindCategory.Bond, Uses.IsEmpty: true } } => "order.destroyed",
        { Kind.Category: KindCategory.Bond } => null,
        _ when fate == Fate.Renewed => "order.replaced",
        { SingleUse: true, Stretch: true } => "order.stretch",
        { SingleUse: true } => "order.single-use",
        _ => null,
    };

    private static IEnumerable<PlanOrderLine> Spares(ImmutableArray<PlannedStep> steps) =>
        steps.Where(step => step is { Closes: true, Joint: { Kind.Spare: not null } joint } && !IsScrap(step.Fate, joint))
            .GroupBy(step => step.Joint!.Kind.Name)
            .Select(kind => (Steps: kind, kind.First().Joint!.Kind, Count: kind.Sum(step => step.Count - step.Renewed)))
            .Select(kind => new PlanOrderLine(
                ItemWords.Of(kind.Kind, kind.Steps.First().Book),
                RoundedUp(kind.Count * kind.Kind.Spare!.BaseValue),
                kind.Steps.First().Book.Say("order.spare"),
                [.. kind.Steps.Select(step => step.Number)],
                [.. kind.Steps.Select(step => Use(step, step.Count - step.Renewed))]))
            .Where(line => line.Count > 0);

    /// <summary>Up to the next whole piece; the noise of binary fractions (100 × 0.07 = 7.000000000000001) is no piece.</summary>
    private static int RoundedUp(double pieces) => (int)Math.Ceiling(pieces - 1e-9);

    private static IEnumerable<PlanOrderLine> Merge(IEnumerable<NewPart> parts) =>
        parts.GroupBy(part => (part.Title, part.Reason)).Select(line => new PlanOrderLine(
            line.Key.Title,
            line.Sum(part => part.Count),
            line.Key.Reason,
            [.. line.Select(part => part.Step.Number).Distinct()],
            [.. line.Select(part => Use(part.Step, part.Count))]));

    private static PlanOrderUse Use(PlannedStep step, int count) => new(
        step switch
        {
            { Joint: { } joint } => ItemWords.Place(joint),
            { Target: { } item } => item.Title,
            _ => step.Text ?? "",
        },
        count,
        step.Phase == PlanPhase.Refit ? step.Mirror : 0,
        step.Number);
}

/// <summary>New parts that go in with a step.</summary>
/// <param name="Title">What.</param>
/// <param name="Count">How many.</param>
/// <param name="Reason">Why new.</param>
/// <param name="Step">The step.</param>
internal readonly record struct NewPart(string Title, int Count, string Reason, PlannedStep Step);

/// <summary>Pieces that come off and never go back.</summary>
/// <param name="Title">What.</param>
/// <param name="Count">How many.</param>
/// <param name="IsPart">Whether it is a part of the machine, which nobody counts.</param>
internal readonly record struct ScrappedPieces(string Title, int Count, bool IsPart)
{
    /// <summary>The same in words.</summary>
    public string Words => IsPart ? Title : ItemWords.Pieces(Count, Title);
}
