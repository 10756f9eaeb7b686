using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Reaching.Visits;
using ProcScript.Analysis.Runs;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching;

/// <summary>Answers how several jobs on one machine are done in one visit: what one has taken off the next finds off, and all goes back once.</summary>
public static class LibraryTogether
{
    /// <summary>How many jobs are put together at the most.</summary>
    private const int MostJobs = 12;

    /// <summary>How many clauses are looked at before the search ends with what it has.</summary>
    private const long Budget = 20_000_000;

    /// <summary>Costs are sums of figures in seconds.</summary>
    private const double Rounding = 1e-6;

    /// <summary>Finds the visit that costs least, performs it there and back, and tells it as a plan.</summary>
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
        var alone = procedures.Select(procedure => Visit.Of(library, facts, procedure)).ToList();
        if (alone.FindIndex(visit => visit is null) is >= 0 and var broken)
        {
            throw new ReachRefusedException($"'{procedures[broken].Job}' is not proven by itself; 'procscript check' says why.");
        }

        var search = VisitSearch.Of(library, facts, [.. alone.Select(visit => new VisitJob(visit!))], Budget);
        if (search.Best is not { } best)
        {
            throw new ReachRefusedException("no order of these jobs was found that can be worked and goes back together: a rule or a condition of one contradicts another. Do them one after the other.");
        }

        var separate = alone.Sum(visit => visit!.Cost);
        return new TogetherReport
        {
            Machine = facts.Machine.Name,
            MachineTitle = facts.Machine.Title,
            With = [.. facts.Machine.With.Select(option => option.Name)],
            Jobs = [.. best.Order.Select(place => new JoinedJob(procedures[place].Job, procedures[place].Title, alone[place]!.Cost))],
            Cost = best.Cost,
            Bound = search.Bound,
            IsCheapest = search.Bound >= best.Cost - Rounding,
            Separate = separate,
            Saved = separate - best.Cost,
            Looked = search.Looked,
            LeftOut = [.. best.Order.SelectMany(place => LeftOut(alone[place]!, best))],
            Plan = PlanBuilder.Build(library, best.Strip, best.Refit, facts.Settings),
        };
    }

    /// <summary>What a job does by itself and the visit does not, since another job clears the way.</summary>
    private static IEnumerable<LeftOutAction> LeftOut(Visit alone, Visit visit)
    {
        var done = visit.Strip.Actions.Select(Act).ToHashSet();
        return alone.Strip.Actions.Where(action => !action.Changes.IsEmpty && action.Origin is not InsertedCap && !done.Contains(Act(action)))
            .Select(action => new LeftOutAction(
                alone.Strip.Procedure.Job,
                ActionTable.Row(action.Verb).Word,
                CanonicalName.Written(action.Target!.Name),
                StepText.Of(new NamedAction(action.Verb, action.Target), Wordbook.English)));

        static (Verb, MachineItem?, int) Act(PerformedAction action) => (action.Verb, action.Target, action.PositionAfter);
    }
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

    /// <summary>How long any visit takes at the least that does what the jobs are for.</summary>
    public required double Bound { get; init; }

    /// <summary>Whether no visit is quicker, as far as the machine is described.</summary>
    public required bool IsCheapest { get; init; }

    /// <summary>How many choices were looked at.</summary>
    public required int Looked { get; init; }

    /// <summary>What jobs do by themselves and the visit does not, since another job clears the way.</summary>
    public required ImmutableArray<LeftOutAction> LeftOut { get; init; }

    /// <summary>The visit as a work pack has it.</summary>
    public required Plan Plan { get; init; }
}

/// <summary>A job of a visit.</summary>
/// <param name="Job">The procedure's name, with its arguments behind hyphens.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Alone">How long it takes by itself, step after step.</param>
public sealed record JoinedJob(string Job, string Title, double Alone);

/// <summary>Something that a job does by itself and a visit does not.</summary>
/// <param name="Job">The job.</param>
/// <param name="Verb">The verb's word in the language.</param>
/// <param name="Item">The item's name.</param>
/// <param name="Text">What is not done, in words.</param>
public sealed record LeftOutAction(string Job, string Verb, string Item, string Text);
