using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Stripping;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching;

/// <summary>
/// A procedure as far as somebody has come with it, as a procedure of its own: what was done, spelled out, and what has to be renewed before it can go
/// back. Its refit is the way back.
/// </summary>
/// <param name="facts">The machine.</param>
/// <param name="whole">The strip of the whole procedure.</param>
/// <param name="done">How many of its actions are done.</param>
internal sealed class HalfStripped(MachineFacts facts, StripRun whole, int done)
{
    /// <summary>How often what a refit lacks is put in before it is given up.</summary>
    private const int MostRounds = 40;

    /// <summary>The way back that the derivation gives; null where there is none that is proven.</summary>
    public BackWay? Derive() => Prove(Spelled());

    /// <summary>The cheapest way back of those that take what came off in pieces, or by halves, back in one.</summary>
    public BackWay Shortest(BackWay derived)
    {
        var best = derived;
        for (var i = 0; i < best.Steps.Length; i++)
        {
            // What an earlier action on the same thing did is left to a later one.
            if (Merged(best.Steps, i) is { } merged && Prove(merged) is { } way && SameEnd(way, derived)
                && (way.Cost, way.Refit.Actions.Length).CompareTo((best.Cost, best.Refit.Actions.Length)) < 0)
            {
                (best, i) = (way, -1);
            }
        }

        return best;
    }

    /// <summary>What any way back costs at the least: each thing that is not as it was takes one action.</summary>
    public static double Bound(BackWay way)
    {
        var machine = way.Strip.Procedure.Machine;
        var steps = StepList.Of(way.Strip, way.Refit).Steps.Where(step => step.Phase == PlanPhase.Refit && step.Target is not null).ToList();
        var least = new Dictionary<States.StateVariable, double>();
        foreach (var (step, action) in steps.Zip(way.Refit.Actions.Where(action => action.Target is not null)))
        {
            if (action.Changes is [var change, ..])
            {
                least[change.Variable] = Math.Min(least.GetValueOrDefault(change.Variable, double.PositiveInfinity), Totals.StepTime.Of(step).Duration);
            }
        }

        // Of a joint in pieces all of them go on, however they are dealt out.
        foreach (var joint in steps.Zip(way.Refit.Actions.Where(action => action.Target is not null)).Where(pair => pair.Second is { Target: Joint, Count: > 0 }).GroupBy(pair => pair.Second.Changes is [var change, ..] ? change.Variable : default))
        {
            if (joint.Key.Kind == States.StateKind.Attached && machine.Joints.Length > joint.Key.Index)
            {
                least[joint.Key] = joint.Sum(pair => Totals.StepTime.Of(pair.First).Duration);
            }
        }

        return way.Strip.Start.Differences(way.Strip.End).Where(least.ContainsKey).Sum(variable => least[variable]);
    }

    private static bool SameEnd(BackWay one, BackWay other) => !one.Strip.End.Differences(other.Strip.End).Any();

    /// <summary>The steps that were done: each action as it was performed, and what was discarded.</summary>
    private ImmutableArray<Step> Spelled()
    {
        var steps = ImmutableArray.CreateBuilder<Step>();
        for (var i = 0; i <= done; i++)
        {
            steps.AddRange(whole.Discards.Where(discard => discard.After == i && (i < done || done == whole.Actions.Length)).Select(discard => discard.Step));
            if (i < done && whole.Actions[i] is { Origin: not InsertedCap } action)
            {
                steps.Add(Spelled(action));
            }
        }

        return steps.ToImmutable();
    }

    /// <summary>An action as a step that does just this.</summary>
    public static Step Spelled(PerformedAction action)
    {
        var step = StepOrigin.Step(action.Origin)!;
        return action.Changes.IsEmpty ? step with { WhereNeeded = null } : step with
        {
            Verb = action.Verb,
            Target = action.Target,
            Count = action.Target is Joint && action.Verb is not (Verb.Loosen or Verb.Tighten) ? action.Count : null,
            Position = action.PositionAfter,
            WhereNeeded = null,
            InBackground = action.InBackground,
            Conditions = action.Origin.Conditions,
            Details = StepOrigin.Details(action.Origin),
        };
    }

    /// <summary>The steps without one whose effect a later step on the same thing can have; null where there is no later one.</summary>
    private static ImmutableArray<Step>? Merged(ImmutableArray<Step> steps, int at)
    {
        var step = steps[at];
        if (step.Target is not (Joint or Part or Control) || ActionTable.Row(step.Verb) is not { Phase: ActionPhase.Strip or (ActionPhase.Strip | ActionPhase.Refit), Effects.IsEmpty: false })
        {
            return null;
        }

        var later = Enumerable.Range(at + 1, steps.Length - at - 1).FirstOrDefault(i => steps[i].Target == step.Target && Takes(steps[i], step), -1);
        if (later < 0)
        {
            return null;
        }

        return step.Target is Joint && step.Verb == steps[later].Verb && step.Count is { } count && steps[later].Count is { } more
            ? steps.SetItem(later, steps[later] with { Count = count + more }).RemoveAt(at)
            : steps.RemoveAt(at);
    }

    /// <summary>Whether a later step brings about all that an earlier one does.</summary>
    private static bool Takes(Step later, Step earlier) => (earlier.Verb, later.Verb) switch
    {
        (Verb.Aside, Verb.Remove) or (Verb.Set, Verb.Set) => true,
        (Verb.Loosen, Verb.Undo) => true,
        var (one, other) => one == other && earlier.Target is Joint,
    };

    /// <summary>The way back from where some steps lead, those among them that say what does not go back or goes back new; null where none is proven.</summary>
    public BackWay? Prove(ImmutableArray<Step> steps)
    {
        ImmutableArray<Step> more = [];
        ImmutableArray<RefitRule> rules = [.. whole.Procedure.Rules];
        ImmutableArray<string> left = [];
        for (var round = 0; round < MostRounds; round++)
        {
            var source = whole.Procedure;
            var procedure = new Procedure
            {
                Name = source.Name,
                Arguments = source.Arguments,
                Parameters = source.Parameters,
                Title = source.Title,
                Declared = source.Declared,
                Machine = source.Machine,
                OnlyWith = source.OnlyWith,
                OnlyWithout = source.OnlyWithout,
                Goals = [],
                Alerts = source.Alerts,
                Details = source.Details,
                Stages = [new Stage(source.Title, [.. steps, .. more.Where(step => ActionTable.Row(step.Verb).Phase != ActionPhase.Work)], source.Declared)],
                Work = [.. more.Where(step => ActionTable.Row(step.Verb).Phase == ActionPhase.Work)],
                Rules = rules,
                Files = source.Files,
                HasErrors = false,
            };
            var strip = StripRunner.Run(whole.Library, facts, procedure);
            // That nobody has proved an energy to be off is no reason to leave the machine open.
            if (strip.Failures.Any(failure => failure is not (NeverProved or NotProved)))
            {
                return null;
            }

            rules = Fitting(rules, strip);
            if (rules.Length < procedure.Rules.Length)
            {
                continue;
            }

            var attempt = RefitDerivation.Attempt(facts, strip);
            if (attempt is { Run: { } refit, Failures.IsEmpty: true })
            {
                var cost = StepList.Of(strip, refit).Steps.Where(step => step.Phase != PlanPhase.Strip && step.Target is not null).Sum(step => Totals.StepTime.Of(step).Duration);
                return new BackWay(steps, strip, refit, cost, left);
            }

            switch (attempt.Failures[0])
            {
                case RuleWithoutAction missing:
                    rules = [.. rules.Where(rule => !Anchors(rule).Contains(missing.Anchor))];
                    break;
                case NeverMet { Step.Origin: RuledCheck check }:
                    Leave(check.Rule, check.Rule.Text);
                    break;
                case Blocked { Step.Origin: RuledCheck check }:
                    Leave(check.Rule, check.Rule.Text);
                    break;
                case NeverMet { Step.Origin: RuledTest test }:
                    Leave(test.Rule, test.Rule.Title);
                    break;
                case Blocked { Step.Origin: RuledTest test }:
                    Leave(test.Rule, test.Rule.Title);
                    break;
                case RuleCircle circle:
                    rules = [.. rules.Where(rule => !circle.Edges.Any(edge => edge.Reason is Ruled ruled && ruled.Rule == rule))];
                    break;
                case SingleUseReturns single:
                    more = more.Add(Made(Verb.Replace, single.Part));
                    break;
                case MustBeRenewed { Opening: null } renewed:
                    more = [.. more, Made(renewed.Item is Part ? Verb.Strip : ActionTable.Opening(renewed.Item).Verb, renewed.Item), Made(Verb.Replace, renewed.Item)];
                    break;
                case MustBeRenewed renewed:
                    more = more.Add(Made(Verb.Replace, renewed.Item));
                    break;
                default:
                    return null;
            }
        }

        return null;

        void Leave(RefitRule rule, string text) => (rules, left) = (rules.Remove(rule), left.Add(text));
    }

    /// <summary>The rules that have something to say as far as the strip has come.</summary>
    private static ImmutableArray<RefitRule> Fitting(ImmutableArray<RefitRule> rules, StripRun strip)
    {
        var moved = strip.Actions.Where(action => !action.Changes.IsEmpty).Select(action => action.Target).OfType<MachineItem>().ToHashSet();
        return
        [
            .. rules.Where(rule => Anchors(rule).All(anchor => moved.Contains(anchor.Target)) && rule switch
            {
                CheckRule { Before: null, After: null } check => check.Conditions.Any(condition => moved.Contains(condition.Item)) || moved.Count > 0 && check.Conditions.IsEmpty,
                TestRule test => test.Powered.All(moved.Contains),
                _ => true,
            }),
        ];
    }

    private static IEnumerable<RefitAnchor> Anchors(RefitRule rule)
    {
        RefitAnchor?[] anchors = rule switch
        {
            OrderRule order => [order.Earlier, order.Later],
            SnugRule snug => [.. snug.Joints],
            FollowUpRule follow => [follow.Target],
            RetorqueRule retorque => [retorque.Target, retorque.Before, retorque.After],
            OpenRule open => [open.Action],
            PlacedRule placed => [placed.Before, placed.After],
            _ => [],
        };
        return anchors.OfType<RefitAnchor>();
    }

    /// <summary>A step that no author wrote.</summary>
    public static Step Made(Verb verb, MachineItem item) => new() { Verb = verb, Target = item, VerbSpan = item.Declared, TargetSpan = item.Declared, Source = item.Declared };
}

/// <summary>A way back that has been proven.</summary>
/// <param name="Steps">What was done, spelled out.</param>
/// <param name="Strip">The same as a strip, with what has to be renewed.</param>
/// <param name="Refit">The way back.</param>
/// <param name="Cost">How long renewing and the way back take, in seconds.</param>
/// <param name="LeftOut">The checks and tests of the job that ask for what is not so on this way back.</param>
internal sealed record BackWay(ImmutableArray<Step> Steps, StripRun Strip, RefitRun Refit, double Cost, ImmutableArray<string> LeftOut);
