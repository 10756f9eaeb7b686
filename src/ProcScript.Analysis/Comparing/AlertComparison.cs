using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Comparing;

/// <summary>Which alerts came, went, or say otherwise. An alert that only stands elsewhere is none of them.</summary>
internal sealed class AlertComparison
{
    private static readonly ImmutableArray<string> Words = ["danger", "warning", "caution", "notice"];

    private List<StandingAlert> _before;
    private List<StandingAlert> _after;
    private readonly List<AlertChange> _changes = [];

    private AlertComparison(List<StandingAlert> before, List<StandingAlert> after) => (_before, _after) = (before, after);

    /// <summary>
    /// The alerts that are otherwise, those that went or are weaker first. One that stands before several steps, such as an action and its
    /// inverse, is told at the first of them.
    /// </summary>
    public static ImmutableArray<AlertChange> Of(Plan before, ImmutableArray<PackStep> stepsBefore, Plan after, ImmutableArray<PackStep> stepsAfter)
    {
        var comparison = new AlertComparison(All(before, stepsBefore), All(after, stepsAfter));
        comparison.Match(alert => (alert.Step?.Key, alert.Alert.Word, alert.Alert.Text));
        comparison.Match(alert => (alert.Step?.Key, alert.Alert.Text));
        comparison.Match(alert => (alert.Alert.Word, alert.Alert.Text));
        comparison.Match(alert => alert.Alert.Text);
        comparison.DropTold(stepsAfter);
        comparison.Match(alert => (alert.Step?.Key, 0));
        comparison.Rest(stepsAfter.ToDictionary(step => step.Key, step => step.Step.Number));
        return
        [
            .. comparison._changes
                .OrderBy(change => change.IsLoss ? 0 : 1)
                .DistinctBy(change => (change.Kind, change.OldWord, change.OldText, change.NewWord, change.NewText)),
        ];
    }

    /// <summary>Takes out of both lists the pairs that have something in common, and tells of those that are not the same.</summary>
    private void Match(Func<StandingAlert, object> common)
    {
        var waiting = _after.GroupBy(common).ToDictionary(same => same.Key, same => new Queue<StandingAlert>(same));
        var (left, met) = (new List<StandingAlert>(), new HashSet<StandingAlert>(ReferenceEqualityComparer.Instance));
        foreach (var old in _before)
        {
            if (!waiting.TryGetValue(common(old), out var same) || !same.TryDequeue(out var now))
            {
                left.Add(old);
                continue;
            }

            met.Add(now);
            var weight = Words.IndexOf(now.Alert.Word).CompareTo(Words.IndexOf(old.Alert.Word));
            if (weight != 0 || old.Alert.Text != now.Alert.Text)
            {
                _changes.Add(Change(weight > 0 ? "weakened" : weight < 0 ? "strengthened" : "reworded", old, now));
            }
        }

        _before = left;
        _after = [.. _after.Where(now => !met.Contains(now))];
    }

    /// <summary>
    /// Takes out what still stands before its step, further up on the same card: an alert stands once a card, so where two cards become one,
    /// one is enough.
    /// </summary>
    private void DropTold(ImmutableArray<PackStep> stepsAfter)
    {
        var steps = stepsAfter.ToDictionary(step => step.Key);
        var told = stepsAfter
            .SelectMany(
                step => step.Step.Alerts,
                (step, alert) => (Place: (step.Phase, step.Card, alert.Text), alert.Word, step.Step.Number))
            .ToLookup(one => one.Place);
        _before.RemoveAll(old => old.Step is { } step
            && steps.TryGetValue(step.Key, out var now)
            && told[(now.Phase, now.Card, old.Alert.Text)]
                .Any(one => one.Number <= now.Step.Number && Words.IndexOf(one.Word) <= Words.IndexOf(old.Alert.Word)));
    }

    private void Rest(Dictionary<(string, string, string, int), int> numbers)
    {
        // Of an alert that is gone, the step is told that it would stand before.
        _changes.AddRange(_before.Select(old => old.Step is null
            ? Change("removed", old, null)
            : numbers.TryGetValue(old.Step.Key, out var number) ? Change("removed", old, null) with { NewStep = number } : Change("gone with its step", old, null)));
        _changes.AddRange(_after.Select(now => Change("added", null, now)));
    }

    private static AlertChange Change(string kind, StandingAlert? old, StandingAlert? now) => new(
        kind,
        old?.Alert.Word ?? "",
        now?.Alert.Word ?? "",
        old?.Alert.Text ?? "",
        now?.Alert.Text ?? "",
        old?.Step?.Step.Number ?? 0,
        now?.Step?.Step.Number ?? 0);

    private static List<StandingAlert> All(Plan plan, ImmutableArray<PackStep> steps) =>
    [
        .. plan.Alerts.Select(alert => new StandingAlert(null, alert)),
        .. steps.SelectMany(step => step.Step.Alerts.Select(alert => new StandingAlert(step, alert))),
    ];

    /// <summary>An alert where it stands: before a step, or over the whole job.</summary>
    private sealed record StandingAlert(PackStep? Step, PlanAlert Alert);
}
