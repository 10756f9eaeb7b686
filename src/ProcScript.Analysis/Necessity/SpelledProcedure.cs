using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Stripping;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Necessity;

/// <summary>
/// A proven procedure with each action spelled out: <c>rest of</c> and <c>all</c> as numbers, <c>strip</c> as what it came to. So
/// a line that is taken out is not silently done by another one.
/// </summary>
internal sealed class SpelledProcedure
{
    private readonly MachineFacts _facts;
    private readonly StripRun _proven;
    private (ImmutableArray<Step> Stages, ImmutableArray<Step> Work)? _steps;

    private SpelledProcedure(MachineFacts facts, StripRun proven) => (_facts, _proven) = (facts, proven);

    /// <summary>How many steps it has: one for each action, and to discard something is none.</summary>
    public int Length => _proven.Actions.Length + _proven.Discards.Length;

    /// <summary>Spells a procedure out.</summary>
    public static SpelledProcedure Of(FamilyMember member) => new(member.Facts, member.Outcome.Strip!);

    /// <summary>The strip without some lines; null where that is no longer proven or misses a goal.</summary>
    public StripRun? Without(StepUnits units, IReadOnlySet<int> removed)
    {
        bool Stays(Step step) => !removed.Contains(units.Of(step));
        var (stages, work) = _steps ??= Spell();
        return Prove(_facts, _proven, [new Stage("", [.. stages.Where(Stays)], _proven.Procedure.Declared)], [.. work.Where(Stays)], units, removed);
    }

    /// <summary>Whether the text itself, without these lines, is proven and misses no goal.</summary>
    public static bool IsProvenWithout(FamilyMember member, StepUnits units, IReadOnlySet<int> removed)
    {
        bool Stays(Step step) => !removed.Contains(units.Of(step));
        var strip = member.Outcome.Strip!;
        ImmutableArray<Stage> stages = [.. strip.Procedure.Stages.Select(stage => stage with { Steps = [.. stage.Steps.Where(Stays)] })];
        return Prove(member.Facts, strip, stages, [.. strip.Procedure.Work.Where(Stays)], units, removed) is not null;
    }

    private static StripRun? Prove(
        MachineFacts facts,
        StripRun proven,
        ImmutableArray<Stage> stages,
        ImmutableArray<Step> work,
        StepUnits units,
        IReadOnlySet<int> removed)
    {
        var rules = proven.Procedure.Rules;
        var strip = StripRunner.Run(
            proven.Library,
            facts,
            proven.Procedure.With(stages, work, [.. rules.Where(rule => !removed.Contains(units.Of(rule)))]));
        return strip is { IsSound: true, MissedGoals.IsEmpty: true }
            && WorkOnTheBench(proven).IsSubsetOf(WorkOnTheBench(strip))
            && RefitDerivation.Attempt(facts, strip) is { Failures.IsEmpty: true }
                ? strip
                : null;
    }

    /// <summary>The work on parts that are out. To do it with the part in place would be other work, even where a hand gets there.</summary>
    private static HashSet<Step> WorkOnTheBench(StripRun strip) => strip.Actions
        .Where(action => action.Changes.IsEmpty && action.Needs.Any(met => met.Need is PartOut need && need.Part == action.Target))
        .Select(action => ((WrittenStep)action.Origin).Step)
        .ToHashSet<Step>(ReferenceEqualityComparer.Instance);

    /// <summary>The steps in full. Most procedures need every line, which is seen without trying; those are never spelled out.</summary>
    private (ImmutableArray<Step> Stages, ImmutableArray<Step> Work) Spell()
    {
        var next = 0;
        ImmutableArray<Step> stages = [.. _proven.Procedure.Stages.SelectMany(stage => stage.Steps).SelectMany(step => Spell(step, ref next))];
        ImmutableArray<Step> work = [.. _proven.Procedure.Work.SelectMany(step => Spell(step, ref next))];
        return (stages, work);
    }

    private ImmutableArray<Step> Spell(Step step, ref int next)
    {
        var spelled = ImmutableArray.CreateBuilder<Step>();
        for (; next < _proven.Actions.Length && IsOf(step, _proven.Actions[next]); next++)
        {
            // Caps come of themselves.
            if (_proven.Actions[next] is { Origin: not InsertedCap } action)
            {
                spelled.Add(Spell(step, action));
            }
        }

        // To discard something is no action of the run; and what was done already must not be done in the place of a line that is taken out.
        return spelled.Count > 0 || IsLeftOut(step) ? spelled.ToImmutable() : [step];
    }

    private bool IsLeftOut(Step step) =>
        step.WhereNeeded is not null && _proven.Skipped.Any(skipped => ReferenceEquals(skipped.Step, step));

    private static bool IsOf(Step step, PerformedAction action) => action.Origin switch
    {
        WrittenStep written => ReferenceEquals(written.Step, step) || IsCheckOf(written.Step, step),
        ExpandedStep expanded => ReferenceEquals(expanded.Step, step),
        InsertedCap inserted => ReferenceEquals(inserted.Step, step),
        _ => false,
    };

    /// <summary>Whether a check is one that stands in the block of a step which was left out.</summary>
    private static bool IsCheckOf(Step check, Step step) =>
        check is { Verb: Verb.Check, WhereNeeded: { } call } && call == step.WhereNeeded && check.Source == step.Source;

    private static Step Spell(Step step, PerformedAction action) => action switch
    {
        { Changes: [] } => ((WrittenStep)action.Origin).Step,
        { Target: Joint } when action.Verb != Verb.Loosen => step with
        {
            Verb = action.Verb,
            Target = action.Target,
            Count = action.Count,
            WhereNeeded = null,
            Conditions = action.Origin.Conditions,
        },
        _ => step with
        {
            Verb = action.Verb,
            Target = action.Target,
            Position = action.PositionAfter,
            WhereNeeded = null,
            Conditions = action.Origin.Conditions,
        },
    };
}
