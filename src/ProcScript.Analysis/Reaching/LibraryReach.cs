using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Procedures;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Reaching;

/// <summary>Answers how something on a machine is reached: what comes off, goes aside, is capped and made safe, in what order, and why.</summary>
public static class LibraryReach
{
    /// <summary>Finds the cheapest way, performs it there and back, and tells it as a plan.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="request">The question.</param>
    /// <exception cref="ReachRefusedException">There is no answer.</exception>
    public static ReachReport Find(Library library, CheckSettings settings, ReachRequest request)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(request);
        var asked = AskedMachine.Find(library, request.Items, request.Machine, request.With);
        foreach (var item in asked.Items)
        {
            Refuse(item);
        }

        var facts = new MachineFacts(asked.Machine) { Settings = settings.For(asked.Machine.Declared.Path) };
        var job = new ReachJob(library, facts, asked.Items, request.Purpose);
        var search = ReachSearch.Of(library, job, request.Weights, request.Budget, request.RunnersUp);
        if (search.Problem is null)
        {
            throw new ReachRefusedException(NeverOff.Because(facts, search.Graph, search.Graph.Problem));
        }

        if (search.Best is not { } best)
        {
            throw new ReachRefusedException(
                $"no way to {ItemPhrases.List(asked.Items.Select(ItemPhrases.The))} was found that can be worked and goes back together: "
                + "what each thing needs contradicts another, or the search has ended too soon. Write the steps as far as you know them, and 'procscript check' says what is in the way.");
        }

        var names = facts.Settings;
        return new ReachReport
        {
            Machine = asked.Machine.Name,
            MachineTitle = asked.Machine.Title,
            With = [.. asked.Machine.With.Select(option => option.Name)],
            Items = [.. asked.Items.Select(item => new ReachedItem(CanonicalName.Written(item.Name), item.Title))],
            Purpose = ActionTable.Row(request.Purpose switch { ReachPurpose.Inspect => Verb.Inspect, ReachPurpose.Replace => Verb.Replace, _ => Verb.Remove }).Word,
            Cost = best.Cost,
            Bound = Math.Min(search.Bound, best.Cost),
            IsCheapest = search.Bound >= best.Cost - Rounding,
            Looked = search.Looked,
            Actions = [.. Reasons(best.Strip)],
            OtherWays = [.. search.RunnersUp.Select(way => Compare(search, best, way))],
            Plan = PlanBuilder.Build(library, best.Strip, best.Refit, names),
            Draft = ProcedureText.Write(best.Strip.Procedure),
            Uses = Uses(library, best.Strip.Procedure),
        };
    }

    /// <summary>Costs are sums of figures in seconds.</summary>
    private const double Rounding = 1e-6;

    private static void Refuse(MachineItem item)
    {
        if (item is not (Part or Joint))
        {
            throw new ReachRefusedException($"{ItemPhrases.The(item)} is no part and no joint: nothing has to come off for it. 'procscript why {CanonicalName.Written(item.Name)}' says what it has to do with.");
        }

        if (item.IsTemporary)
        {
            throw new ReachRefusedException($"{ItemPhrases.The(item)} is there for a job alone, and off to begin with.");
        }
    }

    /// <summary>For each action of the strip and the work the first that it makes possible, and what that needs of it.</summary>
    private static IEnumerable<ReachedAction> Reasons(StripRun strip)
    {
        var book = Wordbook.English;
        var first = new Dictionary<int, (PerformedAction By, Needs.Need Need)>();
        // A cap is for what was opened, and never what that was opened for.
        foreach (var action in strip.Actions.OrderBy(action => action.Verb == Verb.Cap))
        {
            foreach (var met in action.Needs)
            {
                if (met.MetBy >= 0)
                {
                    first.TryAdd(met.MetBy, (action, met.Need));
                }
            }
        }

        var renewed = strip.Actions.Where(action => action.Verb == Verb.Replace).ToLookup(action => action.Target);
        foreach (var action in strip.Actions)
        {
            var (served, because) = first.TryGetValue(action.Number, out var reason)
                ? (reason.By.Number + 1, $"to {StepText.Within(new NamedAction(reason.By.Verb, reason.By.Target), book)}, which needs {NeedPhrases.Wanted(reason.Need)}")
                : (0, IsAsked(strip, action) ? "this is what was asked for" : Why(action, renewed));
            yield return new ReachedAction(
                action.Number + 1, ActionTable.Row(action.Verb).Word, CanonicalName.Written(action.Target!.Name), StepText.Of(new NamedAction(action.Verb, action.Target), book), served, because);
        }
    }

    /// <summary>The files that a procedure names things of: that of its machine, and where the catalog has what only its steps name.</summary>
    internal static ImmutableArray<string> Uses(Library library, Procedure procedure)
    {
        var machine = procedure.Machine.Declared.Path;
        var seen = FileUses.Reach([machine], path => library.Trees.TryGetValue(path, out var tree) ? FileUses.Of(path, tree) : []);
        var details = procedure.Stages.SelectMany(stage => stage.Steps).Concat(procedure.Work).Select(step => step.Details).Concat(procedure.Rules.OfType<CheckRule>().Select(rule => rule.Details)).ToList();
        details.AddRange(details.Select(one => one.Refit).OfType<ActionDetails>().ToList());
        var named = details.SelectMany(one => one.Tools.Select(tool => tool.Declared.Path).Concat(one.Uses.Select(use => use.Supply.Declared.Path)));
        return [machine, .. named.Where(path => !seen.Contains(path)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    private static bool IsAsked(StripRun strip, PerformedAction action) =>
        strip.Procedure.Goals.Any(goal => goal.Verb == action.Verb && goal.Target == action.Target);

    private static string Why(PerformedAction action, ILookup<MachineItem?, PerformedAction> renewed) => action switch
    {
        { Verb: Verb.Cap } => "what is open has to be capped",
        { Verb: Verb.Replace, Target: Part { SingleUse: true } } => "it serves only once, and is off",
        { Verb: Verb.Replace } => "it was disturbed by what came off",
        { Verb: Verb.Verify } => "what is isolated has to be proved to be off",
        _ when renewed[action.Target].Any() => "a new one goes in",
        _ => "what follows asks for the machine as it is then",
    };

    private static OtherWay Compare(ReachSearch search, ReachWay best, ReachWay other)
    {
        return new OtherWay(other.Cost - best.Cost, Only(other, best), Only(best, other));

        ImmutableArray<OtherAction> Only(ReachWay one, ReachWay without) =>
        [
            .. one.Nodes.Except(without.Nodes).Select(node => search.Graph[node])
                .SelectMany(goal => search.Costs.Requests(goal).Take(1).Select(request => new OtherAction(
                    StepText.Of(new NamedAction(request.Verb, request.Target), Wordbook.English)
                        + (request.Target is Control control ? $" to {ItemWords.Position(control, request.Value)}" : request.Target is Joint joint ? $" ({ItemWords.Place(joint)})" : ""),
                    search.Costs.Of(goal))))
                .OrderByDescending(action => action.Cost),
        ];
    }
}
