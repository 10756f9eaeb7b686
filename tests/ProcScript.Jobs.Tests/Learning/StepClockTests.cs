using ProcScript.Analysis.Following;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Learning;
using static ProcScript.Jobs.Tests.Learning.Shop;

namespace ProcScript.Jobs.Tests.Learning;

/// <summary>What of a journal measures a step, and what does not.</summary>
public sealed class StepClockTests
{
    private static readonly JobCourse Course = new Shop(Tank).Course("pump_out");

    [Fact]
    public void A_step_takes_from_the_tick_before_to_its_own()
    {
        var ticks = Clock(Done(500, 1), Done(90, 2), Done(61, 3), Done(200, 4));

        Assert.Equal([null, 90, 61, 200], ticks.Select(tick => tick.Seconds));
        Assert.Equal(NoMeasure.First, ticks[0].Because);
    }

    [Fact]
    public void Everybody_has_a_clock_of_his_own()
    {
        var ticks = Clock(Done(100, 1), Done(10, 2, "Brandt"), Done(90, 3), Done(100, 4, "Brandt"));

        Assert.Equal([null, null, 100, 190], ticks.Select(tick => tick.Seconds));
    }

    [Fact]
    public void A_pause_does_not_count()
    {
        var ticks = Clock(Done(100, 1), (50, Event(EventKind.Pause)), (4_000, Event(EventKind.Resume)), Done(40, 2));

        Assert.Equal([null, 90], ticks.Select(tick => tick.Seconds));
    }

    [Fact]
    public void After_a_pause_without_an_end_nobody_knows()
    {
        var ticks = Clock(Done(100, 1), Done(1, 2, "Brandt"), (50, Event(EventKind.Pause)), Done(400, 3), Done(100, 4), Done(100, 5, "Brandt"));

        Assert.Equal([NoMeasure.First, NoMeasure.First, NoMeasure.Stopped, null, NoMeasure.Stopped], ticks.Select(tick => tick.Because));
    }

    [Fact]
    public void What_was_handed_over_in_the_middle_is_nobodys_measure()
    {
        var handOver = Event(EventKind.HandOver) with { To = "Brandt" };
        var ticks = Clock(Done(100, 1), (50, handOver), (30, Event(EventKind.Resume, "Brandt")), Done(100, 2, "Brandt"), Done(100, 3, "Brandt"), Done(10, 4));

        Assert.Equal([NoMeasure.First, NoMeasure.Stopped, null, NoMeasure.Stopped], ticks.Select(tick => tick.Because));
    }

    [Fact]
    public void Steps_ticked_at_once_are_an_afterthought_and_the_first_of_them_too()
    {
        var ticks = Clock(Done(100, 1), Done(600, 2), Done(0, 3), Done(1, 4), Done(100, 5));

        Assert.Equal([NoMeasure.First, NoMeasure.AtOnce, NoMeasure.AtOnce, NoMeasure.AtOnce, null], ticks.Select(tick => tick.Because));
    }

    [Fact]
    public void Short_steps_that_could_be_done_in_their_time_are_measured()
    {
        var ticks = Clock(Done(100, 1), Done(600, 2), Done(6, 3), Done(9, 4));

        Assert.Equal([null, 600, 6, 9], ticks.Select(tick => tick.Seconds));
    }

    [Theory]
    [InlineData(7_200, null)]
    [InlineData(7_201, NoMeasure.TooLong)]
    public void Longer_than_two_hours_is_no_step(double seconds, NoMeasure? because) => Assert.Equal(because, Clock(Done(100, 1), Done(seconds, 2))[1].Because);

    [Fact]
    public void What_a_tablet_tells_late_counts_when_it_happened()
    {
        var ticks = Clock(Done(100, 1), Done(300, 3), Done(-200, 2));

        Assert.Equal([null, 200, 100], ticks.Select(tick => tick.Seconds));
    }

    [Fact]
    public void What_was_undone_or_was_a_slip_measures_nothing()
    {
        var undone = Clock(Done(100, 1), Done(100, 2), (10, Event(EventKind.Undone) with { Step = 2 }), Done(100, 2), Done(100, 3));
        var slip = Clock(Done(100, 1), Done(100, 2), (10, Event(EventKind.Undone) with { Event = 3 }), Done(100, 2), Done(100, 3));

        Assert.Equal([NoMeasure.First, NoMeasure.Undone, NoMeasure.Undone, null], undone.Select(tick => tick.Because));
        Assert.Equal([null, 210, 100], slip.Select(tick => tick.Seconds));
    }

    [Fact]
    public void Another_count_and_other_work_are_no_measure()
    {
        var count = Clock(Done(100, 2), (100, Event(EventKind.Done) with { Step = 1, Count = 3 }));
        var other = Clock(Done(100, 1), (50, Event(EventKind.Did) with { Verb = "unplug", Item = "pump_plug" }), Done(100, 2), Done(100, 4));

        Assert.Equal([NoMeasure.First, NoMeasure.OtherCount], count.Select(tick => tick.Because));
        Assert.Equal([NoMeasure.First, NoMeasure.OtherWork, null], other.Select(tick => tick.Because));
    }

    [Fact]
    public void What_runs_by_itself_is_not_measured_and_begins_nothing()
    {
        var course = DemoJobs.All.Select(report => JobCourse.Of(report)!).First(one => one.Steps.Any(step => step.Line.InBackground));
        var background = course.Steps.First(step => step.Line.InBackground).Number;
        var next = course.Steps.First(step => step.Number > background && !step.Line.InBackground && step.Line.WaitsFor.IsEmpty && step.Line.WaitsForCureOf.IsEmpty).Number;
        var ticks = StepClock.Of(Replay(course, [Done(10, next + 1), Done(300, background), Done(300, next)]));

        Assert.Equal([NoMeasure.Waiting, NoMeasure.Waiting], ticks.Skip(1).Select(tick => tick.Because));
    }

    [Fact]
    public void A_step_that_two_tick_is_done_once_and_ends_something_for_both()
    {
        var ticks = Clock(Done(100, 1), Done(100, 2), Done(5, 2, "Brandt"), Done(100, 3, "Brandt"));

        Assert.Equal([null, 100, 100], ticks.Select(tick => tick.Seconds));
    }

    [Fact]
    public void Steps_of_new_cards_are_measured_by_these_and_the_first_of_them_is_none()
    {
        var begun = Replay(Course, [Done(100, 2), Done(100, 1)]);
        var home = begun.Machine.WayHome()!;
        var left = home.Steps.Where(step => !home.Done.Contains(step.Number)).Take(2).ToList();
        var replay = begun.With(Event(EventKind.Replanned) with { Number = 4, At = Morning.AddSeconds(300), Plan = home.Plan.Revision, File = "pack-2" });
        foreach (var (i, step) in left.Index())
        {
            replay = replay.With(Event(EventKind.Done) with { Number = 5 + i, At = Morning.AddSeconds(400 + (100 * i)), Plan = home.Plan.Revision, Step = step.Number });
        }

        Assert.Equal("", replay.Unfollowed);
        Assert.Equal([NoMeasure.First, null, NoMeasure.OtherWork, null], StepClock.Of(replay).Select(tick => tick.Because));
        Assert.Equal(left.Select(step => step.Line.Text), StepClock.Of(replay).Skip(2).Select(tick => tick.Ticked.Step.Line.Text));
        Assert.Equal([("lid", 1), ("lid_bolts", 4)], SeenJob.Of("job", replay).Pieces.Select(moved => (moved.Item, moved.Handled)));
    }

    private static StepTick[] Clock(params (double Seconds, JobEvent Event)[] told) => [.. StepClock.Of(Replay(Course, told))];
}
