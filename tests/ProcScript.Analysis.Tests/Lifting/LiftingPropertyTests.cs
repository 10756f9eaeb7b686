using CsCheck;
using ProcScript.Analysis.Lifting;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Tests.Lifting;

public class LiftingPropertyTests
{
    private static readonly Gen<LiftingTask> AnyTask = Gen.Select(
        Gen.Double[0, 80], Gen.Double[0, 200], Gen.Double[0, 200], Gen.Double[0, 150], Gen.Double[0, 16], Gen.Enum<LiftingDuration>(), Gen.Enum<LiftGrip>(),
        (reach, height, travel, twist, often, duration, grip) => new LiftingTask
        {
            Horizontal = reach,
            Vertical = height,
            Distance = travel,
            Asymmetry = twist,
            Frequency = often,
            Duration = duration,
            Coupling = grip,
        });

    [Fact]
    public void No_lift_is_better_than_the_ideal_one() => AnyTask.Sample(task =>
        LiftingEquation.Metric.Limit(task) is >= 0 and <= 23 && LiftingEquation.Customary.Limit(task) is >= 0 and <= 51);

    /// <summary>Farther, longer, more twisted, more often, for longer or with a poorer grip is never better.</summary>
    [Fact]
    public void A_harder_lift_never_has_a_higher_limit() => Gen.Select(AnyTask, Gen.Double[0, 30]).Sample((task, more) =>
    {
        var limit = LiftingEquation.Metric.Limit(task);
        LiftingTask[] harder =
        [
            task with { Horizontal = task.Horizontal + more },
            task with { Distance = task.Distance + more },
            task with { Asymmetry = task.Asymmetry + more },
            task with { Frequency = task.Frequency + more },
            task with { Duration = (LiftingDuration)Math.Min(2, (int)task.Duration + 1) },
            task with { Coupling = (LiftGrip)Math.Min(2, (int)task.Coupling + 1) },
            // Away from knuckle height; the table of frequencies allows more for high hands than for low ones, so below it only.
            task with { Vertical = task.Vertical < 75 ? Math.Max(0, task.Vertical.Value - more) : task.Vertical + more },
        ];
        Assert.All(harder, one => Assert.True(LiftingEquation.Metric.Limit(one) <= limit + 1e-12, $"{one} beside {task}"));
    });

    /// <summary>The two forms of the publication agree but for the rounding of their constants.</summary>
    [Fact]
    public void The_metric_and_the_US_form_agree_within_the_rounding_of_their_constants() =>
        Gen.Select(Gen.Double[26, 60], Gen.Double[5, 170], Gen.Double[26, 170]).Sample((reach, height, travel) =>
        {
            var metric = LiftingEquation.Metric.Limit(new LiftingTask { Horizontal = reach, Vertical = height, Distance = travel });
            var inches = LiftingEquation.Customary.Limit(
                new LiftingTask { Horizontal = reach / 2.54, Vertical = height / 2.54, Distance = travel / 2.54 });
            Assert.Equal(1, inches * 0.45359237 / metric, 0.05);
        });

    [Fact]
    public void A_larger_team_lifts_more_but_never_what_its_members_could() =>
        Gen.Select(Gen.Double[1, 100], Gen.Int[1, 8]).Sample((limit, people) =>
            TeamLift.Limit(limit, people + 1) > TeamLift.Limit(limit, people) && TeamLift.Limit(limit, people) <= people * limit);

    [Fact]
    public void The_least_team_is_enough_and_one_less_is_not() => Gen.Select(Gen.Double[1, 100], Gen.Double[5, 23]).Sample((load, limit) =>
    {
        if (TeamLift.LeastFor(load, limit) is { } people)
        {
            Assert.True(load <= TeamLift.Limit(limit, people));
            Assert.True(people == 1 || load > TeamLift.Limit(limit, people - 1));
        }
        else
        {
            Assert.True(load > TeamLift.Limit(limit, TeamLift.Most));
        }
    });
}
