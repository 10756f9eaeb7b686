using System.Text.Json;
using CsCheck;
using ProcScript.Analysis;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Freezing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Learning;
using ProcScript.Syntax;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Text;
using static ProcScript.Jobs.Tests.Learning.Shop;

namespace ProcScript.Jobs.Tests.Learning;

/// <summary>What must hold of learning, whatever the jobs tell.</summary>
public sealed class LearningProperties
{
    private static readonly Shop Plain = new(Tank);
    private static readonly JobCourse[] Courses = [Plain.Course("pump_out"), Plain.Course("feet_out")];
    private static readonly string[] Notes = ["the lid is warped", "The lid: is warped", "lid is not warped", "mind the loom", "mind that loom there"];

    /// <summary>A job: which course, how long each step takes, and what else is told, as numbers.</summary>
    private static readonly Gen<(int Course, double[] Seconds, (int What, int Which)[] Told)> Told =
        Gen.Select(Gen.Int[0, 1], Gen.Double[61, 900].Array[30], Gen.Select(Gen.Int[0, 5], Gen.Int[0, 99]).Array[0, 6]);

    [Fact]
    public void The_order_of_the_jobs_does_not_matter() => Gen.Select(Told.Array[1, 6], Gen.Int[1, 3]).Sample(
        (told, atLeast) =>
        {
            var jobs = told.Select((one, i) => Job(one, i)).ToList();

            Assert.Equal(Document(Plain.Learn(jobs, atLeast)), Document(Plain.Learn(Enumerable.Reverse(jobs), atLeast)));
        },
        iter: Depth.Of(60));

    [Fact]
    public void Pauses_never_count() => Gen.Select(Told, Gen.Select(Gen.Int[0, 12], Gen.Int[1, 90_000]).Array[1, 4]).Sample(
        (told, pauses) =>
        {
            var events = Events(told).ToList();
            var paused = events.ToList();
            foreach (var (at, seconds) in pauses.DistinctBy(pause => pause.Item1).OrderByDescending(pause => pause.Item1))
            {
                paused.InsertRange(Math.Min(at, paused.Count), [(0, Event(EventKind.Pause)), (seconds, Event(EventKind.Resume))]);
            }

            var course = Courses[told.Course];
            Assert.Equal(Measures(course, events), Measures(course, paused));
        },
        iter: Depth.Of(400));

    [Fact]
    public void What_was_put_in_comes_out() => Told.Sample(
        told =>
        {
            var course = Courses[told.Course];
            var measured = StepClock.Of(Replay(course, Steps(told))).Skip(1).Select(tick => tick.Seconds!.Value).ToList();

            Assert.Equal(course.Steps.Length - 1, measured.Count);
            Assert.All(measured.Index(), one => Assert.Equal(told.Seconds[one.Index + 1], one.Item, 1e-3));
        },
        iter: Depth.Of(200));

    [Fact]
    public void What_was_learned_is_not_learned_again_and_the_library_stays_proven() => Told.Array[3, 6].Sample(
        told =>
        {
            var jobs = told.Select((one, i) => Job(one, i)).ToList();
            var first = Plain.Learn(jobs);
            var after = Plain.After(first);
            var written = first.Document.Suggestions.Where(one => first.Fixes.ContainsKey(one.Number)).Select(Key).ToHashSet();

            Assert.All(first.Texts.After.Procedures, procedure => Assert.True(procedure.IsProven));
            Assert.DoesNotContain(after.Learn(jobs).Document.Suggestions, one => written.Contains(Key(one)));
        },
        iter: Depth.Of(60));

    [Fact]
    public void A_library_that_is_told_its_own_times_learns_none()
    {
        var jobs = DemoJobs.All.SelectMany(report => Enumerable.Range(0, 3).Select(i => (Course: JobCourse.Of(report)!, Number: i)))
            .Select(job => Shop.Job($"{job.Course.Plan.Job} {job.Number}", job.Course, All(job.Course, step => step.Duration.Seconds))).ToList();
        var report = Lessons.Of(jobs, new FrozenLibrary(DemoJobs.Files), CheckSettings.Usual, new LearnRequest(), TestContext.Current.CancellationToken);

        Assert.True(report.Document.Measured > jobs.Count * 5, $"{report.Document.Measured} measures of {jobs.Count} jobs");
        Assert.Empty(report.Document.Suggestions.Where(one => one.Sort == "time").Select(one => $"{one.About}: {one.Written}, {one.Observed}"));
        Assert.Empty(report.Document.Gone);
        Assert.Empty(report.Document.LeftOut);
    }

    [Fact]
    public void Cards_in_another_language_teach_the_same_library()
    {
        var german = DemoJobs.Files.ToDictionary(StringComparer.Ordinal);
        german["procscript.json"] = """{ "language": "de" }"""u8.ToArray();
        var course = FrozenJob.CourseOf(german, "seat_out", [], TestContext.Current.CancellationToken)!;
        var jobs = Enumerable.Range(0, 3).Select(i => Shop.Job($"job {i}", course, All(course, step => step.Line.Verb == "check" ? 300 : step.Duration.Seconds)));
        var report = Lessons.Of(jobs, new FrozenLibrary(DemoJobs.Files), CheckSettings.Usual, new LearnRequest(), TestContext.Current.CancellationToken);

        Assert.Contains(course.Steps, step => step.Line.Text.StartsWith("Prüfen", StringComparison.Ordinal));
        Assert.Empty(report.Document.Gone);
        Assert.Equal(["time 5 min", "time 5 min"], report.Document.Suggestions.Select(one => one.Write));
    }

    [Fact]
    public void The_demo_library_learns_from_slow_jobs_of_all_its_procedures_and_stays_proven_and_laid_out()
    {
        var jobs = DemoJobs.All.SelectMany(report => Enumerable.Range(0, 3).Select(i => (Course: JobCourse.Of(report)!, Number: i)))
            .Select(job => Shop.Job($"{job.Course.Plan.Job} {job.Number}", job.Course, All(job.Course, step => 3 * step.Duration.Seconds))).ToList();
        var report = Lessons.Of(jobs, new FrozenLibrary(DemoJobs.Files), CheckSettings.Usual, new LearnRequest { Only = [LessonSort.Time] }, TestContext.Current.CancellationToken);

        Assert.True(report.Fixes.Count > 100, $"{report.Fixes.Count} of {report.Document.Suggestions.Length}");
        Assert.Empty(report.Texts.Refused);
        Assert.All(report.Texts.After.Procedures, procedure => Assert.True(procedure.IsProven, procedure.Procedure.Job));
        Assert.All(report.Texts.Files, file => Assert.Equal(file.After, Formatter.Format(SyntaxTree.Parse(new SourceText(file.Path, file.After), TestContext.Current.CancellationToken))));
    }

    private static (string Sort, string About, bool OfRefit, string Keyword) Key(Suggestion one) => (one.Sort, one.About, one.OfRefit, one.Write.Split(' ')[0] is var word && word is "how" or "tool" ? one.Write : word);

    private static string Document(LearnReport report) => JsonSerializer.Serialize(report.Document, LearnJson.Published.LearnDocument);

    private static SeenJob Job((int Course, double[] Seconds, (int What, int Which)[] Told) told, int number) => Shop.Job($"job {number}", Courses[told.Course], Events(told));

    private static List<(int Step, double? Seconds)> Measures(JobCourse course, IEnumerable<(double Seconds, JobEvent Event)> told) =>
        [.. StepClock.Of(Replay(course, told)).Select(tick => (tick.Ticked.Step.Number, tick.Seconds is { } seconds ? Math.Round(seconds, 3) : (double?)null))];

    private static IEnumerable<(double Seconds, JobEvent Event)> Steps((int Course, double[] Seconds, (int What, int Which)[] Told) told) =>
        Courses[told.Course].Steps.Select((step, i) => Done(told.Seconds[i], step.Number));

    /// <summary>The steps in their order, and what else is told at their end.</summary>
    private static IEnumerable<(double Seconds, JobEvent Event)> Events((int Course, double[] Seconds, (int What, int Which)[] Told) told)
    {
        var course = Courses[told.Course];
        var step = 1 + (told.Told.Length % course.Steps.Length);
        return Steps(told).Concat(told.Told.Select(one => (5.0, one.What switch
        {
            0 => Event(EventKind.Broke) with { Item = course.Machine.Joints[one.Which % course.Machine.Joints.Length].Name, Count = 1 + (one.Which % 3) },
            1 => Event(EventKind.Missing) with { Tool = one.Which % 2 == 0 ? "step_stool" : "work lamp", Step = step },
            2 => Event(EventKind.Missing) with { Text = one.Which % 2 == 0 ? "contact cleaner" : "rag", Count = 1 },
            3 => Event(EventKind.Broke) with { Item = course.Machine.Parts[one.Which % course.Machine.Parts.Length].Name },
            _ => Event(EventKind.Note) with { Text = Notes[one.Which % Notes.Length], Step = one.What == 4 ? step : null },
        })));
    }
}
