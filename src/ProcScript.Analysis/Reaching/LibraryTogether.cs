using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Totals;
using ProcScript.Model;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching;

/// <summary>Answers how several jobs on one machine are done in one visit: what one has taken off the next finds off, and all goes back once.</summary>
public static class LibraryTogether
{
    /// <summary>How many orders of the jobs are tried.</summary>
    private const int MostOrders = 120;

    /// <summary>How many jobs are put together at the most.</summary>
    private const int MostJobs = 12;

    /// <summary>Finds the order that costs least, performs it there and back, and tells it as a plan.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="jobs">The procedures' names, with their arguments behind hyphens.</param>
    /// <param name="with">Exactly the options that the machine has; null for as few as it takes.</param>
    /// <exception cref="ReachRefusedException">There is no answer.</exception>
    public static TogetherReport Find(Library library, CheckSettings settings, ImmutableArray<string> jobs, ImmutableArray<string>? with = null)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (jobs.Distinct(StringComparer.Ordinal).Count() is < 2 or > MostJobs)
        {
            throw new ReachRefusedException($"name two jobs or more, {MostJobs} at the most, each once.");
        }

        var procedures = AskedJobs.Find(library, [.. jobs.Distinct(StringComparer.Ordinal)], with);
        var facts = new MachineFacts(procedures[0].Machine) { Settings = settings.For(procedures[0].Declared.Path) };
        var alone = procedures.Select(procedure => Prove(library, facts, procedure)).ToList();
        if (alone.FindIndex(visit => visit is null) is >= 0 and var broken)
        {
            throw new ReachRefusedException($"'{procedures[broken].Job}' is not proven by itself; 'procscript check' says why.");
        }

        Visit? best = null;
        var tried = 0;
        foreach (var order in Orders(procedures.Length).Take(MostOrders))
        {
            foreach (var workAtOnce in (bool[])[false, true])
            {
                tried++;
                if (ProveMerged(library, facts, Merged([.. order.Select(place => procedures[place])], workAtOnce)) is { } visit && (best is null || visit.Cost < best.Cost))
                {
                    best = visit with { Order = order };
                }
            }
        }

        if (best is null)
        {
            throw new ReachRefusedException("no order of these jobs was found that can be worked and goes back together: a rule or a condition of one contradicts another. Do them one after the other.");
        }

        best = Shortened(library, facts, best);
        var separate = alone.Sum(visit => visit!.Cost);
        return new TogetherReport
        {
            Machine = facts.Machine.Name,
            MachineTitle = facts.Machine.Title,
            With = [.. facts.Machine.With.Select(option => option.Name)],
            Jobs = [.. best.Order.Select(place => new JoinedJob(procedures[place].Job, procedures[place].Title, alone[place]!.Cost))],
            Cost = best.Cost,
            Separate = separate,
            Saved = separate - best.Cost,
            Tried = tried,
            IsEveryOrder = Factorial(procedures.Length) <= MostOrders,
            Plan = PlanBuilder.Build(library, best.Strip, best.Refit, facts.Settings),
        };
    }

    /// <summary>Leaves out, one by one, what was only in the way of a job that another one clears all the same.</summary>
    private static Visit Shortened(Library library, MachineFacts facts, Visit best)
    {
        for (var stage = 0; stage < best.Strip.Procedure.Stages.Length; stage++)
        {
            for (var place = 0; place < best.Strip.Procedure.Stages[stage].Steps.Length; place++)
            {
                var procedure = best.Strip.Procedure;
                var step = procedure.Stages[stage].Steps[place];
                // What makes safe stays, and so does what nobody else takes up.
                if (step.Verb is not (Verb.Aside or Verb.Loosen)
                    || !best.Strip.Actions.Any(action => action.Target == step.Target && action.Verb is Verb.Remove or Verb.Undo))
                {
                    continue;
                }

                var without = procedure.With(procedure.Stages.SetItem(stage, procedure.Stages[stage] with { Steps = procedure.Stages[stage].Steps.RemoveAt(place) }));
                if (Prove(library, facts, without) is { } shorter && shorter.Cost < best.Cost)
                {
                    best = shorter with { Order = best.Order };
                    place--;
                }
            }
        }

        return best;
    }

    /// <summary>
    /// Proves jobs put together. A control that a later job sets for what is off already cannot be set any more, and need not be: the proof of
    /// what is left says whether it was needed.
    /// </summary>
    private static Visit? ProveMerged(Library library, MachineFacts facts, Procedure merged)
    {
        while (true)
        {
            var strip = StripRunner.Run(new(library, isNoted: false), facts, merged);
            if (strip.Failures.OfType<ConditionFails>().Select(failure => failure.Step).FirstOrDefault(step => step is { Verb: Verb.Set, WhereNeeded: not null }) is not { } useless)
            {
                return Prove(facts, strip);
            }

            var without = merged.Stages.Select(stage => stage with { Steps = stage.Steps.RemoveAll(step => ReferenceEquals(step, useless)) }).ToImmutableArray();
            if (without.Sum(stage => stage.Steps.Length) == merged.Stages.Sum(stage => stage.Steps.Length))
            {
                return null;
            }

            merged = merged.With(without);
        }
    }

    private static Visit? Prove(Library library, MachineFacts facts, Procedure procedure) => Prove(facts, StripRunner.Run(new(library, isNoted: false), facts, procedure));

    private static Visit? Prove(MachineFacts facts, StripRun strip)
    {
        if (strip is not { IsSound: true, MissedGoals.IsEmpty: true })
        {
            return null;
        }

        return RefitDerivation.Attempt(facts, strip) is { Run: { } refit, Failures.IsEmpty: true }
            ? new Visit([], strip, refit, StepList.Of(strip, refit).Steps.Sum(step => StepTime.Of(step).Duration))
            : null;
    }

    /// <summary>The jobs as one: of each what is not done already, then the work, or each work right after its strip.</summary>
    private static Procedure Merged(ImmutableArray<Procedure> jobs, bool workAtOnce)
    {
        var stages = new List<Stage>();
        var work = new List<Step>();
        foreach (var job in jobs)
        {
            var call = new WhereNeeded(job.Declared, job.Title);
            Step Needed(Step step) => step with { WhereNeeded = step.WhereNeeded ?? call };
            stages.AddRange(job.Stages.Select(stage => stage with { Steps = [.. stage.Steps.Select(Needed)] }));
            if (workAtOnce && job != jobs[^1] && !job.Work.IsEmpty)
            {
                stages.Add(new Stage(job.Title, [.. job.Work.Select(Needed)], job.Declared));
            }
            else
            {
                work.AddRange(job.Work.Select(Needed));
            }
        }

        var first = jobs[0];
        return new Procedure
        {
            Name = string.Join("_and_", jobs.Select(job => job.Name)),
            Arguments = [.. jobs.SelectMany(job => job.Arguments)],
            Title = string.Join("; ", jobs.Select(job => job.Title)),
            Declared = first.Declared,
            Machine = first.Machine,
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

    /// <summary>The orders of so many, the given one first.</summary>
    private static IEnumerable<ImmutableArray<int>> Orders(int count) => Orders([], [.. Enumerable.Range(0, count)]);

    private static IEnumerable<ImmutableArray<int>> Orders(ImmutableArray<int> taken, ImmutableArray<int> left) => left.IsEmpty
        ? [taken]
        : left.SelectMany(next => Orders(taken.Add(next), left.Remove(next)));

    private static double Factorial(int count) => Enumerable.Range(1, count).Aggregate(1.0, (product, next) => product * next);

    private sealed record Visit(ImmutableArray<int> Order, StripRun Strip, RefitRun Refit, double Cost);
}

/// <summary>Several jobs in one visit. Times are in seconds.</summary>
public sealed record TogetherReport
{
    /// <summary>The version of this document's form.</summary>
    public string Format { get; init; } = "1";

    /// <summary>The name of the machine.</summary>
    public required string Machine { get; init; }

    /// <summary>What people call the machine.</summary>
    public required string MachineTitle { get; init; }

    /// <summary>The options that it has in this answer.</summary>
    public required ImmutableArray<string> With { get; init; }

    /// <summary>The jobs in the order in which they are done.</summary>
    public required ImmutableArray<JoinedJob> Jobs { get; init; }

    /// <summary>How long the visit takes, step after step.</summary>
    public required double Cost { get; init; }

    /// <summary>How long the jobs take one after the other, each with its own refit.</summary>
    public required double Separate { get; init; }

    /// <summary>What the one visit saves.</summary>
    public required double Saved { get; init; }

    /// <summary>How many orders were tried, with the work at once and at the end.</summary>
    public required int Tried { get; init; }

    /// <summary>Whether every order of the jobs was tried.</summary>
    public required bool IsEveryOrder { get; init; }

    /// <summary>The visit as a work pack has it.</summary>
    public required Plan Plan { get; init; }
}

/// <summary>A job of a visit.</summary>
/// <param name="Job">The procedure's name, with its arguments behind hyphens.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Alone">How long it takes by itself, step after step.</param>
public sealed record JoinedJob(string Job, string Title, double Alone);
