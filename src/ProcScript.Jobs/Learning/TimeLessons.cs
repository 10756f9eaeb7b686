using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.Mending;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Text;

namespace ProcScript.Jobs.Learning;

/// <summary>
/// What measured times say of those that are written. All steps that take their time from one place are measured together, each job by the median
/// of what it has of them. Where they differ by more than twice, each is told of by itself, at its own action.
/// </summary>
internal static class TimeLessons
{
    /// <summary>Steps whose medians are further apart than so many times are not of one time.</summary>
    private const double FarApart = 2;

    /// <summary>So many steps are named in a sentence.</summary>
    private const int MostNamed = 3;

    /// <summary>The lessons.</summary>
    /// <param name="seen">Every measured step as it is now, and the job that measured it.</param>
    /// <param name="atLeast">How many jobs have to tell the same.</param>
    public static IEnumerable<Lesson> Of(IReadOnlyCollection<TimedStep> seen, int atLeast)
    {
        // A time that is written at an item, for the steps without a line of their own, counts for all that have none.
        var items = seen.Where(one => TimePlace.Own(one.Step) is null).Select(one => TimePlace.OfItem(one.Step)).ToHashSet();
        return seen.OrderBy(one => one.Step.Line.Text, StringComparer.Ordinal).ThenBy(one => one.Job, StringComparer.Ordinal)
            .GroupBy(one => TimePlace.OfItem(one.Step) is { } item && items.Contains(item) ? item : TimePlace.Of(one.Step))
            .SelectMany(carried => carried.Key is { } place ? OfPlace([.. carried], place, atLeast) : OfNoPlace(carried, atLeast));
    }

    /// <summary>What <c>strip</c> puts in could be written as a step; what else has no line is the compiler's alone.</summary>
    private static IEnumerable<Lesson> OfNoPlace(IEnumerable<TimedStep> carried, int atLeast) => carried
        .Where(one => one.Step is { Target: Part, Line.Derived: true })
        .GroupBy(one => (one.Step.Target!.Declared, one.Step.Line.Item, one.Step.Line.Verb))
        .SelectMany(step => Told([.. step], new TimePlace(step.Key.Declared, false, TimeCarrier.Action), atLeast))
        .Select(lesson => lesson with { Change = null, Otherwise = $"No line of the text is this step's alone: write it as a step, with `{lesson.Change!.Words}`." });

    private static IEnumerable<Lesson> OfPlace(List<TimedStep> carried, TimePlace place, int atLeast)
    {
        var steps = carried.GroupBy(one => (TimePlace.Own(one.Step), one.Step.Line.Item, one.Step.Line.Verb))
            .Select(step => (step.Key.Item, Spread: SpreadOf(step, place)))
            .Where(step => step.Spread.Jobs >= atLeast)
            .OrderBy(step => step.Spread.Median).ThenBy(step => step.Item, StringComparer.Ordinal)
            .ToList();
        return steps.Count < 2 || steps[^1].Spread.Median <= FarApart * steps[0].Spread.Median ? Told(carried, place, atLeast)
            : place.Carrier == TimeCarrier.Action ? [Unlike(carried, place, steps)]
            : carried.GroupBy(one => TimePlace.Own(one.Step)).SelectMany(step => step.Key is { } own ? OfPlace([.. step], own, atLeast) : []);
    }

    private static IEnumerable<Lesson> Told(List<TimedStep> carried, TimePlace place, int atLeast)
    {
        var spread = SpreadOf(carried, place);
        var written = WrittenOf(carried, place);
        var rounded = TimeWords.Rounded(spread.Median);
        if (spread.Jobs < atLeast || spread.Holds(written) || rounded == TimeWords.Rounded(written))
        {
            yield break;
        }

        var (each, middle) = (Each(carried[0], place), spread.Jobs < Spread.EnoughForQuartiles ? "all" : "half of them");
        yield return new Lesson(
            LessonSort.Time,
            place.Owner,
            About(carried[0], place),
            $"{TimeWords.Said(written)}{each}{From(carried[0], place)}",
            $"{TimeWords.Said(spread.Median)}{each} in {Lesson.CountOf(spread.Jobs)}, {middle} from {TimeWords.Said(spread.Low)} to {TimeWords.Said(spread.High)}{At(carried, place)}",
            JobsOf(carried))
        {
            Change = new PropertyChange(place.Owner, place.OfRefit, place.Carrier == TimeCarrier.Takes ? "takes" : "time", TimeWords.Written(rounded)),
            Spread = spread,
        };
    }

    private static Lesson Unlike(List<TimedStep> carried, TimePlace place, List<(string Item, Spread Spread)> steps) => new(
        LessonSort.Time,
        place.Owner,
        About(carried[0], place),
        $"{TimeWords.Said(WrittenOf(carried, place))}{From(carried[0], place)}",
        string.Join("; ", steps.Select(step => $"{TimeWords.Said(step.Spread.Median)} at {step.Item} in {Lesson.CountOf(step.Spread.Jobs)}")),
        JobsOf(carried))
    {
        Otherwise = "One line stands for steps that take unlike times: write them apart, each with its own `time`.",
    };

    private static string About(TimedStep step, TimePlace place) => place.Carrier switch
    {
        TimeCarrier.Kind => ((Joint)step.Step.Target!).Kind.Title,
        TimeCarrier.Item or TimeCarrier.Takes => TrueMachine.Title(step.Step.Target!),
        _ => step.Step.Line.Text,
    };

    private static string Each(TimedStep step, TimePlace place) =>
        place.Carrier is TimeCarrier.Kind or TimeCarrier.Item && step.Step.Duration.IsPerPiece ? " each" : "";

    /// <summary>Where a time comes from that is not written at the place itself.</summary>
    private static string From(TimedStep step, TimePlace place) => step.Step.Duration.Carrier switch
    {
        TimeCarrier.None => ", a usual time",
        TimeCarrier.Kind when place.Carrier != TimeCarrier.Kind => ", by its kind",
        TimeCarrier.Item or TimeCarrier.Takes when place.Carrier == TimeCarrier.Action => ", by its item",
        _ => "",
    };

    /// <summary>The steps that were measured, where the place stands for others too.</summary>
    private static string At(List<TimedStep> carried, TimePlace place)
    {
        var steps = carried.Select(one => one.Step.Line.Text).Distinct(StringComparer.Ordinal).ToList();
        return place.Carrier == TimeCarrier.Action ? ""
            : $"; at: {string.Join("; ", steps.Take(MostNamed))}{(steps.Count > MostNamed ? $"; and {steps.Count - MostNamed} more" : "")}";
    }

    private static ImmutableArray<string> JobsOf(IEnumerable<TimedStep> carried) => [.. carried.Select(one => one.Job).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The time that counts now. Usual times of one item may differ with what the steps' texts say; then that of the middle.</summary>
    private static double WrittenOf(List<TimedStep> carried, TimePlace place) => SpreadOf(carried, place, one => one.Step.Duration.Seconds).Median;

    private static Spread SpreadOf(IEnumerable<TimedStep> steps, TimePlace place) => SpreadOf(steps, place, one => one.Seconds);

    private static Spread SpreadOf(IEnumerable<TimedStep> steps, TimePlace place, Func<TimedStep, double> seconds) => Spread.Of(
        steps.GroupBy(one => one.Job, StringComparer.Ordinal).Select(job => Spread.MedianOf(job.Select(one => Math.Max(0, one.Step.Duration.Carry(seconds(one), place.Carrier))))));
}

/// <summary>A place that carries a time, or would.</summary>
/// <param name="Owner">Whose block it is.</param>
/// <param name="OfRefit">Whether it is in the block's <c>refit { … }</c>.</param>
/// <param name="Carrier">What it is.</param>
internal sealed record TimePlace(SourceSpan Owner, bool OfRefit, TimeCarrier Carrier)
{
    /// <summary>The place that a step takes its time from; where none does, the one to write it at; null where there is none.</summary>
    public static TimePlace? Of(CourseStep step) => (step.Duration.Carrier, step.Target) switch
    {
        (TimeCarrier.Kind, Joint joint) => new TimePlace(joint.Kind.Declared, false, TimeCarrier.Kind),
        (TimeCarrier.Item or TimeCarrier.Takes, { } item) => new TimePlace(item.Declared, false, step.Duration.Carrier),
        _ => Own(step) ?? OfItem(step),
    };

    /// <summary>
    /// The item of a step that has a usual time, where a time at the item would count for it; else null. What is done to a part is too unlike for one
    /// time: to lift it out, to clean it, to prop it.
    /// </summary>
    public static TimePlace? OfItem(CourseStep step) => (step.Duration.Carrier, step.Target) switch
    {
        (TimeCarrier.None, Fluid fluid) => new TimePlace(fluid.Declared, false, TimeCarrier.Takes),
        (TimeCarrier.None, Control or Energy) => new TimePlace(step.Target.Declared, false, TimeCarrier.Item),
        (TimeCarrier.None, Joint joint) when step.Duration.IsPerPiece => new TimePlace(joint.Declared, false, TimeCarrier.Item),
        _ => null,
    };

    /// <summary>The action's own block; null where it has none.</summary>
    public static TimePlace? Own(CourseStep step) => step.Block is { } block ? new TimePlace(block.Action, block.OfRefit, TimeCarrier.Action) : null;
}

/// <summary>A measured step, as it is now.</summary>
/// <param name="Job">The job.</param>
/// <param name="Step">The step.</param>
/// <param name="Seconds">How long it took.</param>
internal sealed record TimedStep(string Job, CourseStep Step, double Seconds);
