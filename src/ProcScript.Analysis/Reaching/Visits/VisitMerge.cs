using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching.Visits;

/// <summary>Makes one procedure of several jobs.</summary>
internal static class VisitMerge
{
    /// <summary>The jobs one after the other: of each what is not done already, then the work, or each work right after its strip.</summary>
    /// <param name="jobs">The jobs, in order.</param>
    /// <param name="workAtOnce">Whether each work follows its strip.</param>
    /// <param name="has">Whether the visit has a step.</param>
    public static Procedure InOrder(ImmutableArray<VisitJob> jobs, bool workAtOnce, Func<VisitStep, bool> has)
    {
        var stages = new List<Stage>();
        var work = new List<Step>();
        foreach (var job in jobs)
        {
            stages.AddRange(job.Stages.Select(stage => stage.Stage with { Steps = [.. stage.Steps.Where(has).Select(step => step.Step)] }));
            if (workAtOnce && job != jobs[^1] && !job.Work.IsEmpty)
            {
                stages.Add(new Stage(job.Procedure.Title, [.. job.Work.Select(step => step.Step)], job.Procedure.Declared));
            }
            else
            {
                work.AddRange(job.Work.Select(step => step.Step));
            }
        }

        return Procedure([.. jobs.Select(job => job.Procedure)], stages, work);
    }

    /// <summary>The steps of all jobs as single actions; null where something is done by halves.</summary>
    /// <param name="jobs">The jobs, in order.</param>
    /// <param name="has">Whether the visit has a step.</param>
    public static OrderedDictionary<ActionRequest, (Stage Stage, Step Step)>? Actions(ImmutableArray<VisitJob> jobs, Func<VisitStep, bool> has)
    {
        var actions = new OrderedDictionary<ActionRequest, (Stage Stage, Step Step)>();
        foreach (var (stage, steps) in jobs.SelectMany(job => job.Stages))
        {
            foreach (var step in steps.Where(has))
            {
                if (step.Goal is { } goal)
                {
                    actions.TryAdd(Request(step.Step, goal), (stage, step.Step));
                }
                else if (ActionTable.Row(step.Step.Verb).Phase != ActionPhase.Work)
                {
                    return null;
                }
            }
        }

        return actions;
    }

    /// <summary>The jobs with the steps of all of them in an order of its own, what one job clears for another before that; the work of all comes last.</summary>
    /// <param name="jobs">The jobs, in order.</param>
    /// <param name="actions">The actions of their strips, with where each comes from.</param>
    /// <param name="order">The order, with more moves of controls where it needs them.</param>
    public static Procedure Interleaved(
        ImmutableArray<VisitJob> jobs, OrderedDictionary<ActionRequest, (Stage Stage, Step Step)> actions, IEnumerable<ActionRequest> order)
    {
        var stages = new List<Stage>();
        foreach (var request in order)
        {
            var (stage, step) = actions.TryGetValue(request, out var origin)
                ? origin
                : (stages.Count > 0 ? stages[^1] : actions.GetAt(0).Value.Stage, SetOnTheWay(request));
            if (stages.Count == 0 || stages[^1].Source != stage.Source)
            {
                stages.Add(stage with { Steps = [] });
            }

            stages[^1] = stages[^1] with { Steps = stages[^1].Steps.Add(step with { Count = null, WhereNeeded = null }) };
        }

        var last = jobs.SelectMany(job => job.Stages).SelectMany(stage => stage.Steps).Where(step => step.Goal is null).Select(step => step.Step);
        return Procedure([.. jobs.Select(job => job.Procedure)], stages, [.. last, .. jobs.SelectMany(job => job.Work).Select(step => step.Step)]);
    }

    private static ActionRequest Request(Step step, FreeingGoal goal) => new(step.Verb, step.Target, goal switch
    {
        { Item: Joint joint } => joint.Count,
        { Item: Control } => goal.Position,
        { Kind: FreeingKind.ProvedAtOnce } => (int)EnergyState.Dead,
        { Kind: FreeingKind.Switched, Item: Energy { VerifyAt: not null } } => (int)EnergyState.Unproved,
        _ => 0,
    });

    private static Step SetOnTheWay(ActionRequest request) => new()
    {
        Verb = request.Verb,
        Target = request.Target,
        Position = request.Value,
        VerbSpan = request.Target!.Declared,
        TargetSpan = request.Target.Declared,
        Source = request.Target.Declared,
    };

    private static Procedure Procedure(ImmutableArray<Procedure> jobs, IEnumerable<Stage> stages, IEnumerable<Step> work) => new()
    {
        Name = string.Join("_and_", jobs.Select(job => job.Name)),
        Arguments = [.. jobs.SelectMany(job => job.Arguments)],
        Title = string.Join("; ", jobs.Select(job => job.Title)),
        Declared = jobs[0].Declared,
        Machine = jobs[0].Machine,
        Goals = [.. jobs.SelectMany(job => job.Goals).DistinctBy(goal => (goal.Verb, goal.Target))],
        Alerts = [.. jobs.SelectMany(job => job.Alerts).DistinctBy(alert => (alert.Word, alert.Text))],
        Details = ActionDetails.None with
        {
            People = jobs.Max(job => job.Details.People),
            Tools = [.. jobs.SelectMany(job => job.Details.Tools).Distinct()],
            Certificates = [.. jobs.SelectMany(job => job.Details.Certificates).Distinct()],
            Ppe = [.. jobs.SelectMany(job => job.Details.Ppe).Distinct(StringComparer.Ordinal)],
            Uses = [.. jobs.SelectMany(job => job.Details.Uses)],
        },
        Stages = [.. stages],
        Work = [.. work],
        Rules = [.. jobs.SelectMany(job => job.Rules).DistinctBy(rule => rule is CheckRule check ? (object)(check.Text, check.Before?.Target, check.After?.Target) : rule.Source)],
        Files = [.. jobs.SelectMany(job => job.Files).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
        HasErrors = false,
    };
}
