using CsCheck;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Tests.Demo;
using ProcScript.Analysis.Tests.Properties;

namespace ProcScript.Analysis.Tests.Crews;

public class CrewProofTests
{
    private const int Orders = 4;

    private static readonly ListScheduler Quick = new(500);

    [Fact]
    public void Every_order_that_a_schedule_of_a_demo_job_leaves_is_proved_on_the_machine()
    {
        foreach (var report in DemoLibrary.Report.Procedures.Where(report => report.IsProven).Where((_, at) => Depth.IsTaken(at, oneIn: 6)))
        {
            CrewOrders orders = new(report, 2, Quick);
            Assert.Empty(CrewCheck.Failures(orders.Problem, orders.Schedule));
            Assert.True(orders.IsProved, report.Procedure.Job);
            for (var sample = 0; sample < Orders; sample++)
            {
                Assert.Null(orders.Proof.Failure(orders.Any()));
            }
        }
    }

    [Fact]
    public void Every_order_that_a_schedule_of_a_random_job_leaves_is_proved_on_the_machine()
    {
        var proved = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed, asymmetric: true);
                if (sample.Checked.Only is { IsProven: true } report)
                {
                    CrewOrders orders = new(report, 3, Quick);
                    Assert.Empty(CrewCheck.Failures(orders.Problem, orders.Schedule));
                    Assert.True(orders.IsProved, sample.Text);
                    for (var order = 0; order < Orders; order++)
                    {
                        Assert.Null(orders.Proof.Failure(orders.Any()));
                    }

                    Interlocked.Increment(ref proved);
                }
            },
            iter: Depth.Of(200));
        Assert.True(proved >= Depth.Least(100), $"only {proved} jobs were proven");
    }

    [Fact]
    public void An_order_that_cannot_be_worked_is_told_from_one_that_can()
    {
        var orders = OfLid();
        var cards = orders.Steps.Select(step => step.Number - 1).ToList();
        Assert.Null(orders.Proof.Failure(cards));

        (cards[0], cards[1]) = (cards[1], cards[0]);
        Assert.Contains("lacks", orders.Proof.Failure(cards)!, StringComparison.Ordinal);
        Assert.NotNull(orders.Proof.Failure(cards.Take(3)));
    }

    [Fact]
    public void Steps_that_touch_one_thing_may_not_change_places()
    {
        var orders = OfLid();
        Assert.Null(orders.Proof.Clash((_, _) => false));
        Assert.Equal((0, 1), orders.Proof.Clash((_, _) => true));
    }

    private static CrewOrders OfLid() => new(
        Checked.Stage("part lid \"lid\" { held by 4 pin as lid_pins }", "release lid_pins remove lid", "work { clean lid }").Only, 2, Quick);
}
