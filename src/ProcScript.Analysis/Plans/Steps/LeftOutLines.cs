using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// What the cards say of steps that are left out because they are done already: one line a call and card, where its first such step would stand; one
/// line for a call of which nothing is left.
/// </summary>
internal static class LeftOutLines
{
    private const int MostNamed = 6;

    /// <summary>The lines of the cards of strip and work.</summary>
    public static ILookup<(PlanPhase Phase, int Card), PlanLeftOut> Of(StripRun strip, Wordbook book)
    {
        var whole = Whole(strip);
        return strip.Skipped
            .GroupBy(skipped => (Call: skipped.Step.WhereNeeded!, Stage: whole.Contains(skipped.Step.WhereNeeded!) ? int.MinValue : skipped.Stage))
            .Select(group => (Place: Place(group.First(), strip), Skipped: group.ToList(), IsWhole: whole.Contains(group.Key.Call)))
            .Where(line => line.Place is not null)
            .ToLookup(line => line.Place!.Value.Card, line => Line(line.Skipped, line.Place!.Value.Before, line.IsWhole, book));
    }

    /// <summary>The calls of which nothing is left to do.</summary>
    private static HashSet<WhereNeeded> Whole(StripRun strip)
    {
        if (strip.Skipped.IsEmpty)
        {
            return [];
        }

        var skipped = strip.Skipped.Select(one => one.Step).ToHashSet<Step>(ReferenceEqualityComparer.Instance);
        return strip.Procedure.Stages.SelectMany(stage => stage.Steps).Concat(strip.Procedure.Work)
            .Where(step => step is { WhereNeeded.Title: not null, Verb: not Verb.Discard })
            .GroupBy(step => step.WhereNeeded!)
            .Where(call => call.All(skipped.Contains))
            .Select(call => call.Key)
            .ToHashSet();
    }

    /// <summary>The card of a line, and the step that it stands before: on the card of its stage, or where that has none, on the next.</summary>
    private static ((PlanPhase Phase, int Card) Card, int Before)? Place(SkippedStep skipped, StripRun strip)
    {
        var card = 0;
        (int Card, int Before)? last = null;
        for (var stage = 0; stage < strip.Stages.Length; stage++)
        {
            if (strip.Stages[stage].Actions is not [var first, ..] actions)
            {
                continue;
            }

            var isNext = skipped.Stage >= 0 && stage >= skipped.Stage;
            if (isNext)
            {
                return ((PlanPhase.Strip, card), Before(stage == skipped.Stage ? skipped.Before : first.Number, actions));
            }

            last = (card++, 0);
        }

        return !strip.Work.IsEmpty ? ((PlanPhase.Work, 0), skipped.Stage < 0 ? Before(skipped.Before, strip.Work) : StepList.NumberOf(strip.Work[0].Number))
            : last is { } end ? ((PlanPhase.Strip, end.Card), end.Before)
            : null;
    }

    private static int Before(int number, ImmutableArray<PerformedAction> actions) =>
        number <= actions[^1].Number ? StepList.NumberOf(Math.Max(number, actions[0].Number)) : 0;

    private static PlanLeftOut Line(List<SkippedStep> skipped, int before, bool isWhole, Wordbook book)
    {
        ImmutableArray<int> steps = [.. skipped.Where(one => one.DoneBy >= 0).Select(one => StepList.NumberOf(one.DoneBy)).Distinct().Order()];
        var text = isWhole
            ? book.Say("left-out.call", ("call", skipped[0].Step.WhereNeeded!.Title!), ("where", Where(steps, book)))
            : book.Say("left-out.steps", ("where", Capital(Where(steps, book))), ("steps", string.Join("; ", Named(skipped, book))));
        return new PlanLeftOut(before, text, steps);
    }

    private static IEnumerable<string> Named(List<SkippedStep> skipped, Wordbook book)
    {
        var named = skipped.Select(one => Words(one.Step, book)).Distinct(StringComparer.Ordinal).ToList();
        return named.Count > MostNamed + 1 ? [.. named.Take(MostNamed), book.Say("left-out.more", ("count", named.Count - MostNamed))] : named;
    }

    private static string Words(Step step, Wordbook book) => step switch
    {
        { Target: null } => StepText.Of(new NamedAction(step.Verb, null), book) + (step.Text is { } text ? $" {text}" : ""),
        { Target: Model.Machines.Joint joint } => $"{StepText.Within(new NamedAction(step.Verb, joint), book)} ({ItemWords.Place(joint)})",
        { Target: Model.Machines.Control control } =>
            book.Within(book.Say("step.to-position", ("what", book.Say("item.the", ("title", control.Title))), ("position", ItemWords.Position(control, step.Position)))),
        _ => StepText.Within(new NamedAction(step.Verb, step.Target), book),
    };

    /// <summary>Where it was done: steps in a row from the first to the last.</summary>
    private static string Where(ImmutableArray<int> steps, Wordbook book) => steps switch
    {
        [] => book.Say("left-out.from-start"),
        [var only] => book.Say("left-out.done-at", ("steps", Number(only)), ("count", 1)),
        [var first, .., var last] when last - first == steps.Length - 1 => book.Say("left-out.done-from-to", ("first", first), ("last", last)),
        [.. var others, var last] => book.Say("left-out.done-at", ("steps", book.And([.. others.Select(Number), Number(last)])), ("count", steps.Length)),
    };

    private static string Number(int step) => step.ToString(CultureInfo.InvariantCulture);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
