using System.Collections.Frozen;
using ProcScript.Analysis.Plans;
using ProcScript.Model.Names;

namespace ProcScript.Analysis.Expecting;

/// <summary>What can be expected of a pack.</summary>
public static class PackFacts
{
    /// <summary>The phases, in the order of the work.</summary>
    internal static readonly string[] Phases = ["strip", "work", "refit"];

    private static readonly FrozenDictionary<string, Func<Plan, int>> Counters = new Dictionary<string, Func<Plan, int>>
    {
        ["steps"] = plan => Phases.Sum(phase => StepsOf(plan, phase).Count()),
        ["tools"] = plan => plan.Tools.Length,
        ["bags"] = plan => plan.Bags.Length,
        ["orders"] = plan => plan.Orders.Length,
        ["people"] = plan => plan.People,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>What can be counted.</summary>
    public static IEnumerable<string> Counted => Counters.Keys.Order(StringComparer.Ordinal);

    /// <summary>How many of something a pack has.</summary>
    internal static int Count(Plan plan, string what) => Counters[what](plan);

    /// <summary>Whether that can be counted.</summary>
    internal static bool IsCounted(string what) => Counters.ContainsKey(what);

    /// <summary>How long one person takes, in minutes.</summary>
    internal static double Minutes(Plan plan) => plan.Times.OnePerson / 60;

    /// <summary>The steps of a phase.</summary>
    internal static IEnumerable<PlanStep> StepsOf(Plan plan, string phase) => phase switch
    {
        "strip" => plan.Strip.SelectMany(stage => stage.Steps),
        "work" => plan.Work.Steps,
        _ => plan.Refit.SelectMany(stage => stage.Steps),
    };

    /// <summary>A step by its verb and item, <c>undo seat_bolts</c> or <c>set column to down</c>; null for one that is about no item.</summary>
    internal static string? WordsOf(PlanStep step) =>
        step.Item.Length == 0 ? null : $"{step.Verb} {CanonicalName.Written(step.Item)}{(step.Position.Length == 0 ? "" : $" to {step.Position}")}";

    /// <summary>The same with the indices as they are written in sources: <c>remove lamp[front, left]</c>.</summary>
    internal static string Written(string step) => string.Join(", ", step.Split(',', StringSplitOptions.TrimEntries));
}
