using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Comparing;

/// <summary>A step of a pack with the card it stands on, known by what it does and not by its number.</summary>
/// <param name="Key">Its phase, its verb and its item (of a step without one, its text), and which of several such it is.</param>
/// <param name="Phase"><c>strip</c>, <c>work</c> or <c>refit</c>.</param>
/// <param name="Card">The title of its card.</param>
/// <param name="Step">The step.</param>
internal sealed record PackStep((string Phase, string Verb, string About, int Nth) Key, string Phase, string Card, PlanStep Step)
{
    /// <summary>The steps of a plan in the order of the cards.</summary>
    public static ImmutableArray<PackStep> Of(Plan plan)
    {
        var seen = new Dictionary<(string, string, string), int>();
        return
        [
            .. plan.Strip.SelectMany(card => Steps("strip", card)),
            .. Steps("work", plan.Work),
            .. plan.Refit.SelectMany(card => Steps("refit", card)),
        ];

        IEnumerable<PackStep> Steps(string phase, PlanStage card) => card.Steps.Select(step =>
        {
            var about = step.Item.Length > 0 ? step.Item : step.Text;
            var nth = seen[(phase, step.Verb, about)] = seen.GetValueOrDefault((phase, step.Verb, about)) + 1;
            return new PackStep((phase, step.Verb, about, nth), phase, card.Title, step);
        });
    }
}
