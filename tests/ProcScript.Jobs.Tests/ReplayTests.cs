using ProcScript.Analysis.Following;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Intake;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Standing;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Tests;

/// <summary>Jobs as they were done, on the demo library.</summary>
public sealed class ReplayTests
{
    [Fact]
    public void Every_demo_job_can_be_done_by_its_cards_and_closed()
    {
        foreach (var report in DemoJobs.All)
        {
            var course = JobCourse.Of(report)!;
            var replay = DemoJobs.Begin(course);
            foreach (var step in course.Steps)
            {
                Assert.True(replay.Machine.Missing(step).IsEmpty, $"{course.Plan.Job} step {step.Number}: {string.Join("; ", replay.Machine.Missing(step))}");
                replay = Record(replay, step);
            }

            Assert.True(replay.Deviations.Count == 0, $"{course.Plan.Job}: {string.Join("; ", replay.Deviations.Select(one => one.Text))}");
            Assert.Empty(replay.Machine.Unsafe());
            Assert.Empty(replay.Machine.Hidden());
            var open = JobClosing.Open(replay);
            Assert.True(open.IsEmpty, $"{course.Plan.Job}: {string.Join("; ", open)}");
        }
    }

    [Fact]
    public void What_may_be_done_next_always_leads_through_the_whole_job()
    {
        foreach (var report in DemoJobs.All)
        {
            var replay = DemoJobs.Begin(JobCourse.Of(report)!);
            // The last that may be done, so that the order is as far from the cards' as the proof lets it be.
            while (replay.Next().LastOrDefault() is { } step)
            {
                replay = Record(replay, step);
            }

            Assert.True(replay.Done.Count == replay.Course.Steps.Length, $"{report.Procedure.Job}: {replay.Done.Count} of {replay.Course.Steps.Length}");
            Assert.Empty(replay.Deviations);
        }
    }

    [Fact]
    public void A_step_that_is_not_done_keeps_the_job_open()
    {
        var course = DemoJobs.Course(SmallestJob());
        foreach (var left in course.Steps)
        {
            var replay = course.Steps.Where(step => step != left).Aggregate(DemoJobs.Begin(course), Record);

            // A step of the strip that was left with the one that undoes it was never needed; then something else asks for it.
            Assert.True(JobClosing.Open(replay).Length > 0 || left.Line.Mirror > 0, $"step {left.Number} was not done, and nothing says so");
        }
    }

    [Fact]
    public void A_piece_left_off_is_missed_hidden_and_put_on_again_by_new_cards()
    {
        var (course, step) = CountedRefit();
        var replay = DemoJobs.Begin(course);
        foreach (var one in course.Steps)
        {
            replay = one == step ? replay.Do(one.Number, one.Count - 1) : Record(replay, one);
        }

        var joint = (Joint)step.Target!;
        Assert.Equal(1, replay.Machine.Off(joint));
        Assert.True(replay.IsOffCourse);
        Assert.Contains(replay.Deviations, deviation => deviation.Text.Contains("left off", StringComparison.Ordinal));
        Assert.Contains(JobClosing.Open(replay), open => open.Contains(joint.Kind.Title, StringComparison.Ordinal));

        var way = replay.Machine.WayHome();
        Assert.NotNull(way);
        AssertLeadsHome(replay, way);
    }

    [Fact]
    public void Under_every_joint_of_the_seat_a_piece_left_off_is_led_to()
    {
        var course = DemoJobs.Course("seat_out");
        foreach (var counted in course.Steps.Where(step => step is { Phase: CoursePhase.Refit, Count: > 1 }))
        {
            var replay = course.Steps.Aggregate(DemoJobs.Begin(course), (job, step) => step == counted ? job.Do(step.Number, step.Count - 1) : Record(job, step));
            var way = replay.Machine.WayHome();

            Assert.True(way is not null, $"step {counted.Number}: no way home was found");
            AssertLeadsHome(replay, way);
        }
    }

    [Fact]
    public void A_piece_more_than_planned_is_left_over_until_it_is_accounted_for()
    {
        var course = DemoJobs.Course(SmallestJob());
        var step = course.Steps.First(one => one is { Phase: CoursePhase.Strip, Count: > 0 } && one.Line.Bags.Length > 0);
        var replay = DemoJobs.Begin(course).Do(step.Number, step.Count + 1);

        Assert.Equal(1, replay.Extra[step.Target!.Name]);
        Assert.Contains(JobClosing.Open(replay), open => open.Contains("left over", StringComparison.Ordinal));

        replay = replay.Do(step.Line.Mirror, step.Count + 1);
        Assert.Empty(replay.Extra);
    }

    [Fact]
    public void What_was_not_there_is_missed_until_the_joint_is_whole()
    {
        var course = DemoJobs.Course(SmallestJob());
        var joint = course.Steps.Select(step => step.Target).OfType<Joint>().First(one => one.Count > 1);
        var replay = DemoJobs.Begin(course);
        replay = replay.With(DemoJobs.Next(replay, EventKind.Missing) with { Item = joint.Name, Count = 1 });

        Assert.Equal(1, replay.Machine.Off(joint));
        Assert.Contains(JobClosing.Open(replay), open => open.Contains("missing", StringComparison.Ordinal));

        replay = replay.With(DemoJobs.Next(replay, EventKind.Found) with { Item = joint.Name, Count = 1 });
        replay = replay.With(DemoJobs.Next(replay, EventKind.Did) with { Verb = "fasten", Item = joint.Name, Count = 1 });
        Assert.DoesNotContain(JobClosing.Open(replay), open => open.Contains("missing", StringComparison.Ordinal) || open.Contains("left over", StringComparison.Ordinal));
    }

    [Fact]
    public void A_slip_never_was()
    {
        var course = DemoJobs.Course(SmallestJob());
        var replay = DemoJobs.Begin(course).Do(1).Do(2);
        var straight = DemoJobs.Begin(course).Do(1);

        replay = replay.With(DemoJobs.Next(replay, EventKind.Undone) with { Event = 3, Step = null });

        Assert.Equal(straight.Done.Keys, replay.Done.Keys);
        Assert.Empty(straight.Machine.State.Differences(replay.Machine.State));
    }

    [Fact]
    public void Done_and_undone_again_leaves_the_machine_as_it_was()
    {
        var course = DemoJobs.Course(SmallestJob());
        var replay = DemoJobs.Begin(course);
        foreach (var step in course.Steps.Where(step => step.Phase == CoursePhase.Strip))
        {
            replay = replay.Do(step.Number);
            var before = replay.Machine.State.Copy();
            replay = replay.With(DemoJobs.Next(replay, EventKind.Undone) with { Step = step.Number }).Do(step.Number);

            Assert.Empty(before.Differences(replay.Machine.State));
        }
    }

    [Fact]
    public void Ticked_twice_a_step_is_done_once()
    {
        var course = DemoJobs.Course(SmallestJob());
        var once = DemoJobs.Begin(course).Do(1);
        var twice = DemoJobs.Begin(course).Do(1).Do(1);

        Assert.Empty(once.Machine.State.Differences(twice.Machine.State));
        Assert.Empty(twice.Deviations);
    }

    [Fact]
    public void An_energy_that_comes_back_too_early_is_told_as_unsafe()
    {
        var report = DemoJobs.All.First(one => JobCourse.Of(one)!.Steps.Any(step => step.Target is Joint { On: not null } && step.Phase == CoursePhase.Strip));
        var course = JobCourse.Of(report)!;
        var open = course.Steps.First(step => step.Phase == CoursePhase.Strip && step.Target is Joint { On: not null });
        var replay = course.Steps.TakeWhile(step => step.Number <= open.Number).Aggregate(DemoJobs.Begin(course), Record);
        Assert.Empty(replay.Machine.Unsafe());

        replay = replay.With(DemoJobs.Next(replay, EventKind.Did) with { Verb = "restore", Item = ((Joint)open.Target!).On!.Name });

        Assert.NotEmpty(replay.Machine.Unsafe());
        Assert.Contains(replay.Deviations[^1].Means, meaning => meaning.Contains("is live", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("230 V", "treat it as live")]
    [InlineData("no idea", "treat it as live")]
    [InlineData(null, "the reading that proves it is missing")]
    [InlineData("0 V", "proved to be off")]
    public void An_energy_is_off_by_its_reading_and_not_by_a_tick(string? reading, string said)
    {
        var report = DemoJobs.All.First(one => JobCourse.Of(one)!.Steps.Any(step => step is { Target: Energy, Expect.Quantity.Unit.Symbol: "V" }));
        var course = JobCourse.Of(report)!;
        var proof = course.Steps.First(step => step is { Target: Energy, Expect.Quantity.Unit.Symbol: "V" });
        var replay = DemoJobs.Begin(course).Do(proof.Number);
        replay = reading is null ? replay : replay.With(DemoJobs.Next(replay, EventKind.Reading) with { Step = proof.Number, Value = reading });

        var status = JobStanding.Of(replay, JournalText.NoHash, withWayBack: false);
        Assert.Contains(status.Unsafe.Concat(status.Open.Select(open => open.State)), line => line.Contains(said, StringComparison.Ordinal));
        Assert.Equal(said == "treat it as live", status.Unsafe.Length > 0);
    }

    [Fact]
    public void The_standing_of_every_job_in_its_middle_names_bags_and_the_way_back()
    {
        foreach (var report in DemoJobs.All.Take(Depth.IsWhole ? int.MaxValue : 6))
        {
            var course = JobCourse.Of(report)!;
            var half = course.Steps.Count(step => step.Phase == CoursePhase.Strip);
            var replay = course.Steps.Take(half).Aggregate(DemoJobs.Begin(course), Record);
            var status = JobStanding.Of(replay, JournalText.NoHash);

            Assert.Equal(half, status.Done);
            Assert.NotNull(status.Back);
            Assert.Equal(course.Plan.Bags.Where(bag => bag.Contents.Any(line => line.StripStep <= half && line.RefitStep > half)).Select(bag => bag.Number), status.Bags.Select(bag => bag.Number));
            Assert.All(status.Bags, bag => Assert.Equal(course.Plan.Bags.Single(one => one.Number == bag.Number).Contents.Where(line => line.StripStep <= half).Sum(line => line.Count), bag.Count));
        }
    }

    [Theory]
    [InlineData("step 99999", "there is no step")]
    [InlineData("item nowhere", "the machine has no")]
    [InlineData("nobody", "say who")]
    [InlineData("old cards", "Take the new cards")]
    public void What_cannot_have_happened_is_refused(string what, string why)
    {
        var course = DemoJobs.Course(SmallestJob());
        var replay = DemoJobs.Begin(course);
        var told = what switch
        {
            "step 99999" => DemoJobs.Next(replay, EventKind.Done) with { Step = 99_999 },
            "item nowhere" => DemoJobs.Next(replay, EventKind.Broke) with { Item = "nowhere" },
            "nobody" => DemoJobs.Next(replay, EventKind.Note) with { By = " ", Text = "x" },
            _ => DemoJobs.Next(replay, EventKind.Done) with { Step = 1, Plan = "other" },
        };

        var answer = EventIntake.Take(replay, told);

        Assert.Null(answer.Event);
        Assert.Contains(why, answer.Refusal, StringComparison.Ordinal);
    }

    /// <summary>Ticks a step, with a reading that is as it must be.</summary>
    internal static JobReplay Record(JobReplay replay, CourseStep step)
    {
        if (step.Line.Reading is not null || step.Expect is not null)
        {
            replay = replay.With(DemoJobs.Next(replay, EventKind.Reading) with { Step = step.Number, Value = GoodReading.Of(step.Expect) });
        }

        if (step.Line.Signed)
        {
            replay = replay.With(DemoJobs.Next(replay, EventKind.Sign) with { Step = step.Number });
        }

        return replay.Do(step.Number);
    }

    /// <summary>Every step of a way, in its order, may be done when its turn comes, and the machine is whole at the end.</summary>
    internal static void AssertLeadsHome(JobReplay replay, JobCourse way)
    {
        var machine = replay.Machine.On(way);
        foreach (var step in way.Steps.Where(step => !way.Done.Contains(step.Number)))
        {
            var missing = machine.Missing(step);
            Assert.True(missing.IsEmpty, $"{way.Plan.Job} step {step.Number} ({step.Line.Text}): {string.Join("; ", missing)}");
            machine.Do(step);
        }

        Assert.True(!machine.NotWhole().Any(), $"{way.Plan.Job}: {string.Join("; ", machine.NotWhole().Select(open => $"{open.Title} {open.State}"))}");
    }

    internal static string SmallestJob() => DemoJobs.All.Where(report => JobCourse.Of(report)!.Steps.Any(step => step is { Phase: CoursePhase.Strip, Count: > 1, Line.Bags.Length: > 0 }))
        .MinBy(report => JobCourse.Of(report)!.Steps.Length)!.Procedure.Job;

    private static (JobCourse Course, CourseStep Step) CountedRefit()
    {
        var course = DemoJobs.Course(SmallestJob());
        return (course, course.Steps.First(step => step is { Phase: CoursePhase.Refit, Count: > 1 }));
    }
}
