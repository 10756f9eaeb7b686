using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Mending;
using ProcScript.Model.Machines;
using ProcScript.Model.Sources;

namespace ProcScript.Jobs.Learning;

/// <summary>What is to be learned.</summary>
public sealed record LearnRequest
{
    /// <summary>How many jobs have to tell the same.</summary>
    public int AtLeast { get; init; } = 3;

    /// <summary>The sorts of suggestions that are wanted; empty for all.</summary>
    public ImmutableHashSet<LessonSort> Only { get; init; } = [];

    /// <summary>Whether a file may be changed.</summary>
    public Predicate<string> MayChange { get; init; } = _ => true;
}

/// <summary>Holds what jobs tell against the library as it is now, and tries what they suggest on it. The order of the jobs does not matter.</summary>
public static class Lessons
{
    /// <summary>Learns.</summary>
    /// <param name="jobs">What the jobs tell.</param>
    /// <param name="store">The library as it is now.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="request">What is to be learned.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static LearnReport Of(IEnumerable<SeenJob> jobs, ISourceStore store, CheckSettings settings, LearnRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        ImmutableArray<SeenJob> seen = [.. jobs.OrderBy(job => job.Name, StringComparer.Ordinal)];
        var (lessons, leftOut, gone) = (ImmutableArray<Lesson>.Empty, new List<string>(), new List<(string Procedure, string What, string Job)>());
        CurrentTexts? texts = null;
        var tried = PropertyTrial.Run(store, settings, request.MayChange, Ask, cancellation);
        var suggestions = lessons.Select((lesson, i) => Suggestion(lesson, i + 1)).ToImmutableArray();
        return new LearnReport(
            new LearnDocument
            {
                AtLeast = request.AtLeast,
                Jobs = [.. seen.GroupBy(job => job.Procedure, StringComparer.Ordinal).OrderBy(same => same.Key, StringComparer.Ordinal).Select(same => new LearnedJobs(same.Key, same.Count(), same.Count(job => job.IsClosed)))],
                Ticked = seen.Sum(job => job.Ticked),
                Measured = seen.Sum(job => job.Ticked - job.NotMeasured.Values.Sum()),
                NotMeasured = [.. seen.SelectMany(job => job.NotMeasured).GroupBy(reason => reason.Key, reason => reason.Value).OrderByDescending(reason => reason.Sum()).ThenBy(reason => reason.Key).Select(reason => new LearnedReason(reason.Sum(), Words(reason.Key)))],
                Suggestions = suggestions,
                Gone = [.. gone.GroupBy(one => (one.Procedure, one.What)).Select(same => $"{same.Key.Procedure}: {same.Key.What} ({Lesson.CountOf(same.Select(one => one.Job).Distinct().Count())})").Order(StringComparer.Ordinal)],
                LeftOut = [.. leftOut],
            },
            lessons.Index().Where(one => one.Item.Change is { } change && tried.Fixes.ContainsKey(change)).ToImmutableDictionary(one => one.Index + 1, one => tried.Fixes[one.Item.Change!]),
            tried);

        IEnumerable<PropertyChange> Ask(LibraryReport report)
        {
            texts = new CurrentTexts(report);
            lessons = [.. All(texts, seen, request.AtLeast, leftOut, gone).Where(lesson => request.Only.IsEmpty || request.Only.Contains(lesson.Sort))
                .OrderBy(lesson => lesson.At.Path, StringComparer.Ordinal).ThenBy(lesson => lesson.At.Span.Start).ThenBy(lesson => lesson.Sort)
                .ThenBy(lesson => lesson.Change?.OfRefit).ThenBy(lesson => lesson.Observed, StringComparer.Ordinal)];
            return lessons.Select(lesson => lesson.Change).OfType<PropertyChange>();
        }

        Suggestion Suggestion(Lesson lesson, int number)
        {
            var (line, column) = texts!.PlaceOf(lesson.At);
            var refused = lesson.Change is { } change && tried.Refused.TryGetValue(change, out var because) ? $"It is not written: {because}." : "";
            return new Suggestion
            {
                Number = number,
                Sort = lesson.Sort.ToString().ToLowerInvariant(),
                Path = lesson.At.Path,
                Line = line,
                Column = column,
                About = lesson.About,
                Written = lesson.Written,
                Observed = lesson.Observed,
                Jobs = lesson.Jobs,
                Seconds = lesson.Spread,
                Write = lesson.Change?.Words ?? "",
                OfRefit = lesson.Change?.OfRefit == true,
                ByHand = lesson.Change is null ? lesson.Otherwise : refused,
            };
        }
    }

    private static IEnumerable<Lesson> All(CurrentTexts texts, ImmutableArray<SeenJob> jobs, int atLeast, List<string> leftOut, List<(string Procedure, string What, string Job)> gone)
    {
        var (times, pieces) = (new List<TimedStep>(), new List<(string Job, MachineItem Item, SeenPieces Pieces)>());
        var (tools, things, notes) = (new List<ToldWords>(), new List<ToldWords>(), new List<ToldWords>());
        foreach (var job in jobs)
        {
            if (texts.Of(job, out var whyNot) is not { } procedure)
            {
                leftOut.Add($"{job.Name}: {whyNot}");
                continue;
            }

            foreach (var time in job.Times)
            {
                if (procedure.Step(time.Step) is { } step && step.Duration.Pieces == time.Pieces)
                {
                    times.Add(new TimedStep(job.Name, step, time.Seconds));
                }
                else
                {
                    gone.Add((job.Procedure, time.Text, job.Name));
                }
            }

            foreach (var moved in job.Pieces)
            {
                if (procedure.Item(moved.Item) is { } item)
                {
                    pieces.Add((job.Name, item, moved));
                }
                else
                {
                    gone.Add((job.Procedure, moved.Item, job.Name));
                }
            }

            foreach (var (told, kept) in (IEnumerable<(ImmutableArray<SeenWords>, List<ToldWords>)>)[(job.Tools, tools), (job.Things, things), (job.Notes, notes)])
            {
                kept.AddRange(told.Where(words => words.Step is null || procedure.Step(words.Step) is not null)
                    .Select(words => new ToldWords(job.Name, procedure, words.Step is null ? null : procedure.Step(words.Step), words.Text, words.Count)));
                gone.AddRange(told.Where(words => words.Step is not null && procedure.Step(words.Step) is null).Select(words => (job.Procedure, words.StepText, job.Name)));
            }
        }

        var said = new WordLessons(texts, atLeast);
        return [.. TimeLessons.Of(times, atLeast), .. PieceLessons.Of(pieces, atLeast), .. said.Tools(tools), .. said.Things(things), .. said.Notes(notes)];
    }

    private static string Words(NoMeasure because) => because switch
    {
        NoMeasure.First => "the first tick of somebody",
        NoMeasure.AtOnce => "ticked several at once",
        NoMeasure.Stopped => "after a hand-over, or a stop without an end",
        NoMeasure.Waiting => "with a wait, or in the background",
        NoMeasure.TooLong => "too long to be one step",
        NoMeasure.Undone => "undone again, or after something that was",
        NoMeasure.OtherWork => "after other work or new cards",
        _ => "with another count",
    };
}
