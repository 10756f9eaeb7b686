using System.Collections.Immutable;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// What ties the steps of a replacement together: the one that scraps the old, the work that gets the new ready, and the one at which it goes in.
/// </summary>
/// <param name="steps">The steps; a step's number is its index and one.</param>
internal sealed class Renewals(ImmutableArray<PlannedStep> steps)
{
    /// <summary>The new parts that go in with a step, with where the old ones were scrapped.</summary>
    public ImmutableArray<PlanNewPart> NewParts(PlannedStep step)
    {
        var scrapped = Mirror(step) is { } mirror ? OrderList.Scrapped(mirror).Select(pieces => pieces.Title).ToHashSet(StringComparer.Ordinal) : [];
        return [.. OrderList.NewParts(step).Select(part => new PlanNewPart(part.Title, part.Count, scrapped.Contains(part.Title) ? step.Mirror : 0))];
    }

    /// <summary>The steps at which new ones go in for what a step scraps, or for what a <c>replace</c> is about.</summary>
    public ImmutableArray<int> NewAt(PlannedStep step) => [.. Going(step).Where(part => part.Pieces > 0).Select(part => part.Step).Distinct()];

    /// <summary>How many pieces these are.</summary>
    public int NewCount(PlannedStep step) => Going(step).Sum(part => part.Pieces);

    /// <summary>The steps at which what a <c>replace</c> is about came off and was scrapped.</summary>
    public ImmutableArray<int> OldOffAt(PlannedStep step) =>
        step.Verb == Verb.Replace ? [.. OfReplaced(step).Where(one => OrderList.Scrapped(one).Any()).Select(one => one.Number)] : [];

    /// <summary>
    /// What a <c>replace</c> uses up, and how, belongs to the moment at which the new one goes in: nobody spreads paste before that. The step of
    /// the refit takes both over.
    /// </summary>
    public static ImmutableArray<PlannedStep> WithWhatGoesInWithTheNew(ImmutableArray<PlannedStep> steps)
    {
        if (!steps.Any(step => step is { Verb: Verb.Replace, Details.Uses.IsEmpty: false }))
        {
            return steps;
        }

        var all = steps.ToBuilder();
        foreach (var replace in steps.Where(step => step is { Verb: Verb.Replace, Details.Uses.IsEmpty: false }))
        {
            var fits = steps.FirstOrDefault(step => step.Number > replace.Number && step.Target == replace.Target && (step.Verb == Verb.Fit || step.Closes));
            if (fits is not null)
            {
                var now = all[fits.Number - 1];
                all[replace.Number - 1] = replace with { Details = replace.Details with { Uses = [], How = [] } };
                all[fits.Number - 1] = now with
                {
                    Details = now.Details with
                    {
                        Uses = [.. replace.Details.Uses, .. now.Details.Uses],
                        How = [.. replace.Details.How, .. now.Details.How],
                    },
                };
            }
        }

        return all.ToImmutable();
    }

    private IEnumerable<(int Step, int Pieces)> Going(PlannedStep step) => step switch
    {
        { Verb: Verb.Replace } => OfReplaced(step).SelectMany(GoingFor),
        { Phase: PlanPhase.Refit } => [],
        _ => GoingFor(step),
    };

    private IEnumerable<(int Step, int Pieces)> GoingFor(PlannedStep scraps) => Mirror(scraps) is { } fits
        ? [(fits.Number, NewParts(fits).Where(part => part.Replaces == scraps.Number).Sum(part => part.Count))]
        : [];

    /// <summary>The steps that took off what a <c>replace</c> is about.</summary>
    private IEnumerable<PlannedStep> OfReplaced(PlannedStep replace) =>
        steps.Where(step => step.Number < replace.Number && step.Target == replace.Target && (step.Verb == Verb.Remove || step.Opens));

    private PlannedStep? Mirror(PlannedStep step) => step.Mirror > 0 ? steps[step.Mirror - 1] : null;
}
