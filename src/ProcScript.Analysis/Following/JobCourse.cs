using System.Collections.Immutable;
using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Model.Texts;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Following;

/// <summary>
/// What somebody follows who does a job: the plan, and each of its steps with what it does to the machine. Where a job left its plan, a new course
/// takes it up from there.
/// </summary>
public sealed class JobCourse
{
    private JobCourse(Library library, StripRun strip, RefitRun refit, PathSettings settings, IReadOnlyDictionary<string, PlanBag>? labelled = null, IReadOnlySet<int>? done = null)
    {
        (Library, Strip, Refit, Settings, Done) = (library, strip, refit, settings, [.. (done ?? ImmutableHashSet<int>.Empty).Order()]);
        Plan = Marked(PlanBuilder.Build(library, strip, refit, settings, labelled), done);
        Steps = Number(Plan, strip, refit);
    }

    /// <summary>The plan.</summary>
    public Plan Plan { get; }

    /// <summary>The steps; the step of number n stands at n - 1.</summary>
    public ImmutableArray<CourseStep> Steps { get; }

    /// <summary>The machine in the variant of the job.</summary>
    public Machine Machine => Strip.Procedure.Machine;

    /// <summary>The steps that are done already where the course is taken up.</summary>
    public ImmutableArray<int> Done { get; }

    /// <summary>The steps of its strip that have to be done again, since what they open was closed too early.</summary>
    public ImmutableArray<int> Again { get; private init; } = [];

    /// <summary>The checks and tests of the job that ask for what is not so on this course.</summary>
    public ImmutableArray<string> LeftOut { get; private init; } = [];

    internal Library Library { get; }

    internal StripRun Strip { get; }

    internal RefitRun Refit { get; }

    /// <summary>What the shop has chosen for it.</summary>
    public PathSettings Settings { get; }

    internal MachineFacts Facts => Strip.Facts;

    /// <summary>The course of a procedure in one variant; null where it is not proven, or where the check let its runs go.</summary>
    /// <param name="report">What the check says of it.</param>
    public static JobCourse? Of(ProcedureReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report is { IsProven: true, Outcome: { Strip: { } strip, Refit: { } refit } }
            ? new JobCourse(report.Library, strip, refit, report.Outcome.OwnSettings)
            : null;
    }

    /// <summary>The step of a number; null where there is none.</summary>
    public CourseStep? Step(int number) => number >= 1 && number <= Steps.Length ? Steps[number - 1] : null;

    /// <summary>The machine as it comes in.</summary>
    public TrueMachine Begin() => new(this, Strip.Start.Copy());

    /// <summary>The course from the middle of this one.</summary>
    /// <param name="way">The way back.</param>
    /// <param name="again">How many of the steps of its strip have to be done again, by their places.</param>
    internal JobCourse TakeUp(Reaching.BackWay way, IReadOnlySet<int> again)
    {
        var done = way.Strip.Actions.Select(action => StepList.NumberOf(action.Number)).Where(number => !again.Contains(number)).ToHashSet();
        return new JobCourse(Library, way.Strip, way.Refit, Settings, Labelled(), done)
        {
            Again = [.. again.Order()],
            LeftOut = [.. way.LeftOut.Distinct(StringComparer.Ordinal)],
        };
    }

    /// <summary>The bags that pieces lie in, by the names of the joints that they are of: a label that is written stays true.</summary>
    private Dictionary<string, PlanBag> Labelled()
    {
        var labelled = new Dictionary<string, PlanBag>(StringComparer.Ordinal);
        foreach (var step in Steps.Where(step => step.Phase != CoursePhase.Refit && step is { Target: Joint, Line.Bags: [_, ..] }))
        {
            labelled.TryAdd(step.Target!.Name, Plan.Bags.First(bag => bag.Number == step.Line.Bags[0]));
        }

        return labelled;
    }

    private static Plan Marked(Plan plan, IReadOnlySet<int>? done)
    {
        if (done is null)
        {
            return plan;
        }

        var marked = plan with { Strip = [.. plan.Strip.Select(Mark)], Work = Mark(plan.Work), Revision = "" };
        return marked with { Revision = PlanRevision.Of(marked) };

        PlanStage Mark(PlanStage stage) => stage with
        {
            Steps = [.. stage.Steps.Select(step => step with { IsDone = done.Contains(step.Number) })],
            Energies = [.. stage.Energies.Select(Stands)],
        };

        // Who takes up the card finds an energy as the last of the steps that are done has left it.
        PlanEnergyState Stands(PlanEnergyState energy) => energy.Turns.Where(turn => done.Contains(turn.Step)).LastOrDefault() is { } last
            ? energy with { State = last.State, Since = last.Step, Turns = [.. energy.Turns.Where(turn => !done.Contains(turn.Step))] }
            : energy;
    }

    private static Limit? Limit(PlannedStep step) => step switch
    {
        { Expect: { } limit } => limit,
        { EndsProved: true, Target: Energy energy } => energy.VerifyExpect,
        _ => ChargeBand.Band(step.Charge) is { } band ? new Limit(LimitRelation.Within, band) : null,
    };

    private static ImmutableArray<CourseStep> Number(Plan plan, StripRun strip, RefitRun refit)
    {
        var lines = plan.Strip.SelectMany(card => card.Steps.Select(line => (Phase: CoursePhase.Strip, Card: card.Title, Line: line)))
            .Concat(plan.Work.Steps.Select(line => (Phase: CoursePhase.Work, Card: plan.Work.Title, Line: line)))
            .Concat(plan.Refit.SelectMany(card => card.Steps.Select(line => (Phase: CoursePhase.Refit, Card: card.Title, Line: line))));
        var planned = StepList.Of(strip, refit).Steps;
        var expected = WarnedWaits.Add(planned, CardWarnings.Of(planned, strip.Facts, Wordbook.English));
        var earlier = strip.Order.Concat(refit.Order).ToLookup(edge => edge.Later, edge => edge.Earlier);
        PerformedAction[] actions = [.. strip.Actions, .. refit.Actions];
        return
        [
            .. lines.Select((step, i) => new CourseStep(actions[i])
            {
                Number = step.Line.Number,
                Phase = step.Phase,
                Card = step.Card,
                Line = step.Line,
                Expect = Limit(expected[i]),
                Duration = StepDuration.Of(expected[i]),
                Words = LibraryTexts.Plain(expected[i].Text ?? ""),
                Earlier = [.. earlier[i].Concat(actions[i].WaitsFor).Distinct().Order().Select(StepList.NumberOf)],
            }),
        ];
    }
}
