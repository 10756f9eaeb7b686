using System.Globalization;
using System.Text.Json;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Reaching;
using ProcScript.Cards.Words;

namespace ProcScript.Cards.Reaching;

/// <summary>Writes how something is reached. Same answer, same characters out.</summary>
public static class ReachText
{
    /// <summary>As lines for a terminal.</summary>
    public static IEnumerable<string> Lines(ReachReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var plan = report.Plan;
        var because = report.Actions.ToDictionary(action => action.Step, Because);
        return
        [
            $"{plan.Title}, {report.MachineTitle}{(report.With.IsEmpty ? "" : $" with {string.Join(", ", report.With)}")}",
            .. Head(report),
            "",
            .. plan.Strip.SelectMany(stage => PlanLines.Of(plan, stage, step => because.GetValueOrDefault(step.Number, ""))),
            .. PlanLines.Of(plan, plan.Work, step => because.GetValueOrDefault(step.Number, "")),
            .. plan.Refit.SelectMany(stage => PlanLines.Of(plan, stage, _ => "")),
            .. PlanLines.Lists(plan),
            .. Others(report),
        ];
    }

    /// <summary>The chain of reasons of one action, or of several.</summary>
    /// <param name="report">The answer.</param>
    /// <param name="action">A step's number, a verb with an item as sources have it, or an item alone.</param>
    /// <exception cref="ReachRefusedException">The way has no such action.</exception>
    public static IEnumerable<string> Explain(ReachReport report, string action)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(action);
        var wanted = string.Join(' ', action.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        var meant = report.Actions.Where(one =>
            wanted == one.Step.ToString(CultureInfo.InvariantCulture) || wanted == $"{one.Verb} {one.Item}" || wanted == one.Item
            || wanted.Equals(one.Text, StringComparison.OrdinalIgnoreCase)).ToList();
        if (meant.Count == 0)
        {
            throw new ReachRefusedException(
                $"the cheapest way has no action '{action}': it has {string.Join(", ", report.Actions.Take(MostNamed).Select(one => $"'{one.Verb} {one.Item}'"))}{(report.Actions.Length > MostNamed ? " and more" : "")}.");
        }

        foreach (var one in meant)
        {
            foreach (var (depth, link) in report.ChainOf(one).Index())
            {
                yield return $"{new string(' ', 2 * depth)}{link.Step}  {link.Text} ({link.Item}): {link.Because}";
            }
        }
    }

    /// <summary>As JSON, in the form that <c>reach.schema.json</c> describes.</summary>
    public static string Json(ReachReport report) => JsonSerializer.Serialize(report, ReachJson.Published.ReachReport) + "\n";

    /// <summary>How many actions are named where none is meant.</summary>
    private const int MostNamed = 12;

    private static string Because(ReachedAction action) => action.For > 0 ? $"{action.Because} (step {action.For})" : action.Because;

    private static IEnumerable<string> Head(ReachReport report)
    {
        var plan = report.Plan;
        yield return report.IsCheapest
            ? $"No way is cheaper: proved over {Counted(report.Looked, "choice")}."
            : $"The best of {Counted(report.Looked, "choice")}; another way may cost up to {Durations.InWords(report.Cost - report.Bound)} less.";
        var times = plan.Times;
        yield return $"About {Durations.InWords(times.OnePerson)} there and back: {Durations.InWords(times.Strip)} off, {Durations.InWords(times.Refit)} on"
            + (times.Work > 0 ? $", {Durations.InWords(times.Work)} work" : "") + (times.Waiting > 0 ? $", of it {Durations.InWords(times.Waiting)} waiting" : "")
            + ". Bench times: the real job takes longer.";
        if (plan.People > 1 || plan.HeaviestLift is not null)
        {
            yield return (plan.People > 1 ? $"{plan.People} people at the most" : "One person")
                + (plan.HeaviestLift is { } lift ? string.Create(CultureInfo.InvariantCulture, $"; heaviest lift: {lift.Part}, {lift.Kilograms:0.#} kg{(lift.Hoist ? ", with a hoist" : "")}") : "") + ".";
        }

        foreach (var alert in plan.Alerts)
        {
            yield return $"! {alert.Word.ToUpperInvariant()}: {alert.Text}";
        }

        if (!plan.Licensed.IsEmpty)
        {
            yield return $"! {string.Join(", ", plan.Licensed)}: {Wordbook.English.Say("cover.licensed")}";
        }

        yield return "! Usual cautions; they do not replace the manufacturer's data, local codes or a licensed person's judgement.";
    }

    private static IEnumerable<string> Others(ReachReport report)
    {
        if (report.OtherWays.IsEmpty)
        {
            yield break;
        }

        yield return "";
        yield return "Other ways";
        foreach (var (place, way) in report.OtherWays.Index())
        {
            yield return $"  {place + 1}. {(way.More < 1 ? "as cheap" : $"{Durations.InWords(way.More)} more")}";
            foreach (var action in way.Instead)
            {
                yield return $"     + {action.Text} [{Durations.Exact(action.Cost)}]";
            }

            foreach (var action in way.Without)
            {
                yield return $"     - {action.Text} [{Durations.Exact(action.Cost)}]";
            }
        }
    }

    private static string Counted(int count, string what) => $"{count.ToString(CultureInfo.InvariantCulture)} {what}{(count == 1 ? "" : "s")}";
}
