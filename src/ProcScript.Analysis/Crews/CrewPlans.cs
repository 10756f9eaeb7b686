using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Totals;

namespace ProcScript.Analysis.Crews;

/// <summary>Tells a schedule in the steps of the cards.</summary>
internal sealed class CrewPlans
{
    private readonly Plan _plan;
    private readonly CrewJob _job;
    private readonly CrewProblem _problem;
    private readonly CrewSchedule _schedule;
    private readonly CrewOrder _order;

    private CrewPlans(Plan plan, CrewJob job, CrewProblem problem, CrewSchedule schedule)
    {
        (_plan, _job, _problem, _schedule) = (plan, job, problem, schedule);
        _order = new CrewOrder(problem, schedule);
    }

    /// <summary>Schedules a job for so many people.</summary>
    /// <param name="plan">Its plan.</param>
    /// <param name="steps">The steps of its plan.</param>
    /// <param name="runs">Its strip and its refit.</param>
    /// <param name="size">How many people.</param>
    /// <param name="scheduler">Who schedules.</param>
    public static CrewPlan Of(Plan plan, ImmutableArray<PlannedStep> steps, (StripRun Strip, RefitRun Refit) runs, CrewSize size, ICrewScheduler scheduler)
    {
        var people = size.People;
        var job = CrewJob.Of(steps, runs.Strip, runs.Refit);
        var totals = ImmutableArray.CreateBuilder<CrewTotal>(people);
        var best = job.ByTheCards();
        totals.Add(new CrewTotal(1, plan.Times.OnePerson));
        for (var crew = 2; crew <= people; crew++)
        {
            var problem = job.For(size with { People = crew });
            var found = scheduler.Schedule(problem);
            var kept = CrewSchedule.With(problem, best.Starts, problem.AsksWho ? [.. best.People.Select(some => some.ToArray())] : null);
            // Where one more saves nothing, all goes on as without: whoever is one more lends a hand where two are asked for, and else stands by.
            // Where the fewer lacked somebody who holds what is asked for, there is nothing to keep.
            best = found.End(problem) < kept.End(problem) || CrewCheck.Failures(problem, kept).Any()
                ? found
                : kept with { IsOptimal = found.IsOptimal, Least = found.Least };
            if (CrewCheck.Failures(problem, best).Any() || !IsProved(job, problem, best, runs.Strip, runs.Refit))
            {
                throw new InvalidOperationException("A schedule breaks what the job asks for.");
            }

            totals.Add(new CrewTotal(crew, best.End(problem) / JobTimes.Milliseconds));
        }

        var all = job.For(size);
        var least = Math.Max(best.Least, CrewBounds.Least(all));
        return new CrewPlans(plan, job, all, best with { Least = least, IsOptimal = best.IsOptimal || best.End(all) <= least }).Tell(totals.MoveToImmutable());
    }

    /// <summary>Whether every order that a schedule leaves people is proved on the machine.</summary>
    internal static bool IsProved(CrewJob job, CrewProblem problem, CrewSchedule schedule, StripRun strip, RefitRun refit)
    {
        var order = new CrewOrder(problem, schedule);
        var proof = new CrewProof(strip, refit);
        var taskOf = new int[strip.Actions.Length + refit.Actions.Length];
        foreach (var (task, steps) in job.Steps.Index())
        {
            foreach (var step in steps)
            {
                taskOf[step.Number - 1] = task;
            }
        }

        var numbers = order.Tasks.SelectMany(task => job.Steps[task].Select(step => step.Number - 1));
        return proof.Failure(numbers) is null && proof.Clash((one, other) =>
            taskOf[one] != taskOf[other] && !order.IsBefore(taskOf[one], taskOf[other]) && !order.IsBefore(taskOf[other], taskOf[one])) is null;
    }

    /// <summary>The letter that somebody is called by.</summary>
    internal static string NameOf(int person) => person < 26 ? $"{(char)('A' + person)}" : string.Create(CultureInfo.InvariantCulture, $"A{person - 25}");

    private CrewPlan Tell(ImmutableArray<CrewTotal> totals) => new()
    {
        Job = _plan.Job,
        Title = _plan.Title,
        MachineTitle = _plan.MachineTitle,
        Seconds = totals[^1].Seconds,
        OnePerson = _plan.Times.OnePerson,
        Least = Math.Min(_schedule.Least / JobTimes.Milliseconds, totals[^1].Seconds),
        IsShortest = _schedule.IsOptimal,
        Totals = totals,
        People = [.. Enumerable.Range(0, _problem.People).Select(Person)],
        CriticalPath = Path(),
        Steps = [.. _order.Tasks.SelectMany(Entries).OrderBy(entry => entry.Start).ThenBy(entry => entry.Step)],
        SideBySide = Meanwhiles.Of(_problem, _schedule, _job.Steps),
        ToolsAtOnce = Tools(),
        Certificates = [.. _job.Certificates.Select((_, at) => at).Where(at => _problem.Holders[at].Length < _problem.People).Select(Certificate)],
        Uncertified = [.. _order.Tasks.Where(task => _problem.Tasks[task].Hands > 0 && _problem.Asked(task).Length < _problem.Tasks[task].Certificates.Length).SelectMany(StepsOf).Order()],
        Places = [.. _plan.Places.Where(place => place.Room < _problem.People).Select(place => new CrewPlace(place.Title, place.Room, place.Steps))],
        NeedHelp = [.. _job.Steps.SelectMany(steps => steps).Where(step => step.People > _problem.People).Select(step => step.Number).Order()],
    };

    private CrewPerson Person(int person)
    {
        var tasks = _order.Tasks.Where(task => _schedule.People[task].Contains(person)).ToList();
        return new CrewPerson(
            NameOf(person),
            tasks.Sum(task => _problem.Tasks[task].Attended) / JobTimes.Milliseconds,
            [.. tasks.SelectMany(StepsOf)]);
    }

    private CrewCertificate Certificate(int at) => new(
        _job.Certificates[at]?.Name ?? "",
        // Both lists are in the order in which steps ask; the plan's is in the language of the cards.
        _job.Certificates[at] is null ? "" : _plan.Certificates[_job.Certificates.Take(at).Count(one => one is not null)].Title,
        [.. _problem.Holders[at].Select(NameOf)],
        [.. _order.Tasks.Where(task => _problem.Tasks[task].Certificates.Contains(at)).SelectMany(StepsOf).Order()]);

    private IEnumerable<int> StepsOf(int task) => _job.Steps[task].Select(step => step.Number);

    private IEnumerable<CrewEntry> Entries(int task)
    {
        var one = _problem.Tasks[task];
        var clock = _schedule.Starts[task];
        var steps = _job.Steps[task];
        foreach (var (at, step) in steps.Index())
        {
            var time = StepTime.Of(step);
            var (free, end) = (clock + JobTimes.Whole(time.Held), clock + JobTimes.Whole(time.Duration));
            yield return new CrewEntry(step.Number, TextOf(step.Number), Names(task), Seconds(clock), Seconds(free), Seconds(Math.Max(free, end)))
            {
                StandClear = one.StandClear && _problem.People > 1,
                WaitsFor = at > 0 ? [] : [.. _order.Waits[task].Select(wait => new CrewWait(_job.Steps[wait][^1].Number, Names(wait)))],
            };
            clock = free;
        }
    }

    private ImmutableArray<string> Names(int task) => [.. _schedule.People[task].Select(NameOf)];

    private string TextOf(int step) =>
        _plan.Strip.Append(_plan.Work).Concat(_plan.Refit).SelectMany(stage => stage.Steps).First(one => one.Number == step).Text;

    private CrewPath Path()
    {
        var tails = CrewBounds.Tails(_problem);
        var after = _problem.Lags().ToLookup(lag => lag.Earlier);
        var steps = ImmutableArray.CreateBuilder<int>();
        var task = Array.IndexOf(tails, tails.Max());
        while (task >= 0)
        {
            steps.AddRange(_job.Steps[task].Select(step => step.Number));
            var here = task;
            task = after[here].Where(lag => tails[here] == lag.Least + tails[lag.Later]).Select(lag => lag.Later).DefaultIfEmpty(-1).First();
        }

        return new CrewPath(Seconds(tails.Max()), steps.ToImmutable());
    }

    /// <summary>The tools that are in two people's hands at once, but for those of which every bench has several.</summary>
    private ImmutableArray<CrewTool> Tools()
    {
        var house = _plan.Tools.Where(tool => tool.OfHouse).Select(tool => tool.Title).ToHashSet(StringComparer.Ordinal);
        var tools = _plan.Strip.Append(_plan.Work).Concat(_plan.Refit).SelectMany(stage => stage.Steps).ToDictionary(step => step.Number, step => step.Tools);
        var pairs = from one in Enumerable.Range(0, _problem.Tasks.Length)
                    from other in Enumerable.Range(0, one)
                    where _schedule.Starts[one] < _schedule.Starts[other] + _problem.Tasks[other].Attended
                        && _schedule.Starts[other] < _schedule.Starts[one] + _problem.Tasks[one].Attended
                    from first in _job.Steps[other]
                    from second in _job.Steps[one]
                    from tool in tools[first.Number].Intersect(tools[second.Number]).Where(tool => !house.Contains(tool))
                    select (Tool: tool, first.Number, Second: second.Number);
        return [.. pairs.GroupBy(pair => pair.Tool).Select(pair => new CrewTool(pair.Key, [.. pair.SelectMany(one => (int[])[one.Number, one.Second]).Distinct().Order()]))];
    }

    private static double Seconds(long milliseconds) => milliseconds / JobTimes.Milliseconds;
}
