using System.Collections.Immutable;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;

namespace ProcScript.Analysis.Totals;

/// <summary>The times of a job: its cards and phases for one person, and the whole for one and for a crew.</summary>
/// <param name="Plan">The times of the phases and of the whole.</param>
/// <param name="Cards">The seconds of each card, by phase and index.</param>
internal sealed record JobTimes(PlanTimes Plan, IReadOnlyDictionary<(PlanPhase Phase, int Card), double> Cards)
{
    /// <summary>How many of a crew's units of time a second has.</summary>
    internal const double Milliseconds = 1000;

    /// <summary>Works the steps off. What runs in the background holds up only what waits for it, and the end of the job.</summary>
    /// <param name="steps">The steps in the order of the cards.</param>
    /// <param name="work">The same as work for a crew.</param>
    public static JobTimes Of(ImmutableArray<PlannedStep> steps, CrewJob work)
    {
        var cards = new Dictionary<(PlanPhase Phase, int Card), double>();
        var crew = steps.Select(step => step.People).Append(2).Max();
        var (clock, end) = (0.0, 0.0);
        var (given, usual, waiting) = (0.0, 0.0, 0.0);
        foreach (var (step, scheduled) in steps.Zip(Starts(steps)))
        {
            var time = StepTime.Of(step);
            var start = scheduled.Start;
            waiting += start - clock + time.Held - time.Attended;
            given += time.IsUsual ? 0 : time.Attended;
            usual += time.IsUsual ? time.Attended : 0;
            end = Math.Max(end, start + time.Duration);
            Add(cards, step, start + time.Held - clock);
            clock = start + time.Held;
        }

        if (!steps.IsEmpty)
        {
            Add(cards, steps[^1], end - clock);
        }

        return new JobTimes(
            new PlanTimes(
                PhaseTime(cards, PlanPhase.Strip),
                PhaseTime(cards, PlanPhase.Work),
                PhaseTime(cards, PlanPhase.Refit),
                end,
                Math.Min(end, CrewTime.Least(work.For(crew)) / Milliseconds),
                given,
                usual,
                waiting + end - clock)
            {
                CrewSize = crew,
            },
            cards);
    }

    /// <summary>When one person gets to each step, how long it holds them, and when its effect is there. A step's number is its index and one.</summary>
    public static ImmutableArray<(double Start, double Held, double End)> Starts(ImmutableArray<PlannedStep> steps)
    {
        var starts = ImmutableArray.CreateBuilder<(double Start, double Held, double End)>(steps.Length);
        var clock = 0.0;
        foreach (var step in steps)
        {
            var time = StepTime.Of(step);
            var start = step.WaitsFor.Select(before => starts[before - 1].End).Append(clock).Max();
            starts.Add((start, time.Held, start + time.Duration));
            clock = start + time.Held;
        }

        return starts.MoveToImmutable();
    }

    /// <summary>Seconds in whole milliseconds.</summary>
    internal static long Whole(double seconds) => (long)Math.Round(seconds * Milliseconds);

    private static double PhaseTime(Dictionary<(PlanPhase Phase, int Card), double> cards, PlanPhase phase) =>
        cards.Where(card => card.Key.Phase == phase).Sum(card => card.Value);

    private static void Add(Dictionary<(PlanPhase Phase, int Card), double> cards, PlannedStep step, double seconds) =>
        cards[(step.Phase, step.Card)] = cards.GetValueOrDefault((step.Phase, step.Card)) + seconds;
}
