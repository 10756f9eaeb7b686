using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Comparing;

/// <summary>
/// Which precautions a job has lost while what they were for is still done: a step such as <c>isolate</c>, or something of what makes an
/// energy safe. That the new strip is proven says nothing here, for whoever took the step out may have taken the need out too.
/// </summary>
internal static class SafetyComparison
{
    /// <summary>The losses, steps before measures.</summary>
    public static ImmutableArray<SafetyChange> Of(StripRun before, StripRun after) => [.. Steps(before, after), .. Measures(before, after)];

    private static IEnumerable<SafetyChange> Steps(StripRun before, StripRun after)
    {
        var done = after.Actions.Select(Key).ToHashSet();
        foreach (var lost in Precautions(before).Where(action => !done.Contains(Key(action))))
        {
            var users = before.Actions.Where(action => action.Number != lost.Number && IsFor(lost, action)).ToList();
            if (users.Count == 0 ? before.Actions.Any(action => IsHandWork(action) && done.Contains(Key(action))) : users.Exists(user => done.Contains(Key(user))))
            {
                yield return new SafetyChange("gone", ActionTable.Row(lost.Verb).Word, lost.Target!.Name, lost.Target.Title, ItemPhrases.Words(new NamedAction(lost.Verb, lost.Target)), "")
                {
                    IsStep = true,
                };
            }
        }
    }

    /// <summary>Whether an action leans on a precaution: it needs what that changed, or frees the part that it props.</summary>
    private static bool IsFor(PerformedAction precaution, PerformedAction action) =>
        action.Needs.Any(met => met.MetBy == precaution.Number)
        || (precaution is { Verb: Verb.Support, Target: Part propped } && (action.Target == propped || (action.Target is Joint joint && (joint.Owner == propped || joint.Other == propped))));

    private static bool IsHandWork(PerformedAction action) => action.Target is Joint or Part && !ActionTable.Row(action.Verb).IsPrecaution;

    private static IEnumerable<PerformedAction> Precautions(StripRun run) => run.Actions.Where(action => ActionTable.Row(action.Verb).IsPrecaution);

    /// <summary>Of the energies that both isolate.</summary>
    private static IEnumerable<SafetyChange> Measures(StripRun before, StripRun after)
    {
        var now = Isolated(after).ToDictionary(energy => energy.Name, StringComparer.Ordinal);
        return Isolated(before).Where(energy => now.ContainsKey(energy.Name)).SelectMany(energy => Measures(energy, now[energy.Name]));
    }

    private static IEnumerable<Energy> Isolated(StripRun run) =>
        Precautions(run).Where(action => action.Verb == Verb.Isolate).Select(action => action.Target).OfType<Energy>().DistinctBy(energy => energy.Name);

    private static IEnumerable<SafetyChange> Measures(Energy before, Energy after)
    {
        (string Measure, string? Old, string? New)[] texts =
            [("lock", before.Lock, after.Lock), ("bleed", before.Bleed, after.Bleed), ("verify", before.Verify, after.Verify)];
        foreach (var (measure, old, fresh) in texts)
        {
            if (old is not null && fresh is null)
            {
                yield return new SafetyChange("gone", measure, after.Name, after.Title, old, "");
            }
        }

        if (before.Wait is { } wait && (after.Wait is null || after.Wait.BaseValue < wait.BaseValue))
        {
            yield return Change("wait", wait.Print(), after.Wait?.Print());
        }

        if (before.VerifyExpect is { } limit && after.Verify is not null && (after.VerifyExpect is null || IsWider(after.VerifyExpect, limit)))
        {
            yield return Change("expect", limit.Print(), after.VerifyExpect?.Print());
        }

        SafetyChange Change(string measure, string old, string? fresh) =>
            new(fresh is null ? "gone" : "weaker", measure, after.Name, after.Title, old, fresh ?? "");
    }

    /// <summary>
    /// Whether more passes than by another limit, in the base unit. It is the most that counts: what is to be dead must not read more. That the
    /// bound itself passes or not makes no difference to a reading.
    /// </summary>
    private static bool IsWider(Limit limit, Limit other) => Most(limit) > Most(other);

    private static double Most(Limit limit) => limit.Relation is LimitRelation.AtLeast or LimitRelation.More
        ? double.PositiveInfinity
        : (limit.Quantity.High * limit.Quantity.Unit.Factor) + limit.Quantity.Unit.Offset;

    private static (Verb Verb, string Target) Key(PerformedAction action) => (action.Verb, action.Target?.Name ?? "");
}
