using CsCheck;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Standing;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Tests;

/// <summary>What a list says of a job by its journal alone is what the job says that is played.</summary>
public sealed class JobLineTests
{
    private static readonly JobCourse[] Courses = [.. DemoJobs.All.Select(report => JobCourse.Of(report)!).OrderBy(course => course.Steps.Length).Take(8)];

    [Fact]
    public void A_line_says_what_the_job_says_that_is_played()
    {
        Gen.Select(Gen.Int[0, Courses.Length - 1], Gen.Select(Gen.Int[0, 13], Gen.Int[0, 9_999]).Array[0, 60]).Sample(
            job =>
            {
                var replay = job.Item2.Aggregate(DemoJobs.Begin(Courses[job.Item1]), (sofar, told) => Happen(sofar, told.Item1, told.Item2));

                var line = JobLine.Of("j", replay.Events)!;

                var status = JobStanding.Of(replay, "", withWayBack: false);
                Assert.Equal((status.State, status.Done, status.Steps, status.Events), (line.State, line.Done, line.Steps, line.Events));
                Assert.Equal((replay.Paused?.By, replay.Paused?.To, replay.Paused?.Text), (line.PausedBy, line.To, line.Why));
                Assert.Equal(replay.Deviations.Count(one => one.Event.Kind.IsDeviation), line.Deviations);
            },
            iter: Depth.Of(1_200));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_kind_that_is_a_deviation_is_one_to_whoever_plays_it(EventKind kind)
    {
        var replay = DemoJobs.Begin(Courses[0]);
        var joint = replay.Course.Machine.Joints.First(one => !one.IsTemporary);

        replay = replay.With(Outside(replay, kind, joint, 1));

        Assert.Equal(kind.IsDeviation, replay.Deviations.Any());
    }

    [Fact]
    public void Of_new_cards_it_counts_what_they_had_left_to_do()
    {
        var replay = DemoJobs.Begin(Courses[0]).Do(1).Do(2);
        JobEvent replanned = DemoJobs.Next(replay, EventKind.Replanned) with { Plan = "newer", Count = 7, File = "pack-2" };
        List<JobEvent> events = [.. replay.Events, replanned];
        var made = JobLine.Of("j", events)!;
        events.Add(DemoJobs.Next(replay, EventKind.Done) with { Number = 5, Plan = "newer", Step = 3 });
        events.Add(DemoJobs.Next(replay, EventKind.Done) with { Number = 6, Step = 4 });

        var later = JobLine.Of("j", events)!;

        Assert.Equal((0, 7), (made.Done, made.Steps));
        Assert.Equal((1, 7), (later.Done, later.Steps));
        Assert.Equal(Courses[0].Steps.Length, JobLine.Of("j", [.. replay.Events, replanned with { Count = null }])!.Steps);
    }

    [Fact]
    public void What_does_not_begin_with_a_job_has_no_line()
    {
        Assert.Null(JobLine.Of("j", []));
        Assert.Null(JobLine.Of("j", [DemoJobs.Next(DemoJobs.Begin(Courses[0]), EventKind.Note)]));
    }

    [Fact]
    public void A_bag_that_was_said_to_lie_somewhere_by_a_slip_does_not_lie_there()
    {
        var course = DemoJobs.Course("seat_out");
        var bagged = course.Steps.First(step => step is { Phase: CoursePhase.Strip, Count: > 0 } && step.Line.Bags.Length > 0);
        var replay = DemoJobs.Begin(course).Do(bagged.Number);
        var bag = BagContents.Of(replay).First().Number;
        replay = replay.With(DemoJobs.Next(replay, EventKind.Bag) with { Bag = bag, Text = "the red crate" });
        var told = JobStanding.Of(replay, "", withWayBack: false);

        replay = replay.With(DemoJobs.Next(replay, EventKind.Undone) with { Event = replay.Events.Count });

        Assert.Equal("the red crate", told.Bags.Single(one => one.Number == bag).Where);
        Assert.Equal("", JobStanding.Of(replay, "", withWayBack: false).Bags.Single(one => one.Number == bag).Where);
    }

    public static TheoryData<EventKind> Kinds() => [EventKind.Did, EventKind.Broke, EventKind.Missing, EventKind.Found, EventKind.Note, EventKind.Pause, EventKind.Photo];

    /// <summary>Something happens, as it would be let in.</summary>
    private static JobReplay Happen(JobReplay replay, int what, int which)
    {
        var joints = replay.Course.Machine.Joints.Where(joint => !joint.IsTemporary).ToList();
        var happened = what switch
        {
            < 5 => DemoJobs.Next(replay, EventKind.Done) with { Step = 1 + (which % replay.Course.Steps.Length) },
            5 => DemoJobs.Next(replay, EventKind.Undone) with { Step = 1 + (which % replay.Course.Steps.Length) },
            6 when replay.Events.Count > 1 => DemoJobs.Next(replay, EventKind.Undone) with { Event = 2 + (which % (replay.Events.Count - 1)) },
            7 => DemoJobs.Next(replay, EventKind.Pause) with { Text = "dinner" },
            8 => DemoJobs.Next(replay, EventKind.HandOver) with { To = "Tomas" },
            9 => DemoJobs.Next(replay, EventKind.Resume),
            10 => Outside(replay, EventKind.Broke, joints[which % joints.Count], which % 3),
            11 => Outside(replay, which % 2 == 0 ? EventKind.Missing : EventKind.Found, joints[which % joints.Count], 1),
            12 => Outside(replay, EventKind.Did, joints[which % joints.Count], 1),
            13 when which % 10 == 0 => DemoJobs.Next(replay, EventKind.Closed),
            _ => DemoJobs.Next(replay, EventKind.Note) with { Text = "x" },
        };
        return replay.Closed is null ? replay.With(happened) : replay;
    }

    private static JobEvent Outside(JobReplay replay, EventKind kind, Joint joint, int count) => DemoJobs.Next(replay, kind) with
    {
        Item = joint.Name,
        Count = count,
        Verb = kind == EventKind.Did ? new[] { "undo", "release", "unplug", "disconnect", "cut" }.First(verb => TrueMachine.Suits(TrueMachine.VerbOf(verb)!.Value, joint)) : null,
    };
}
