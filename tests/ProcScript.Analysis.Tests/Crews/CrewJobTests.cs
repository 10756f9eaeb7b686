using System.Collections.Immutable;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Tests.Demo;

namespace ProcScript.Analysis.Tests.Crews;

public class CrewJobTests
{
    private static readonly ListScheduler Lists = new();

    private const string TwoCovers =
        """
        energy mains "mains" { isolate "Pull the plug." verify "Measure." restore "Put the plug in." }
        part left "left cover" { held by 4 bolt as left_bolts { time 60 s } }
        part right "right cover" { held by 4 bolt as right_bolts { time 60 s } }
        part core "core" { behind left, right  needs mains isolated }
        """;

    private const string OffAndOn = "isolate mains undo left_bolts remove left undo right_bolts remove right remove core";

    [Fact]
    public void Two_people_take_a_cover_each()
    {
        var plan = Checked.Stage(TwoCovers, OffAndOn).Only.CreateCrewPlan(new CrewSize(2), Lists)!;
        Assert.True(plan.IsShortest);
        Assert.True(plan.Seconds < plan.OnePerson);
        Assert.Contains(plan.SideBySide, one => one.People.Any(share => share.Steps.Contains(2)) && one.People.Any(share => share.Steps.Contains(4)));
        Assert.Equal([plan.OnePerson, plan.Seconds], plan.Totals.Select(total => total.Seconds));
    }

    [Fact]
    public void Nothing_begins_before_the_machine_is_safe_and_all_stand_clear_when_power_comes_back()
    {
        var plan = Checked.Stage(TwoCovers, OffAndOn).Only.CreateCrewPlan(new CrewSize(3), Lists)!;
        var isolated = plan.Steps.Single(step => step.Step == 1);
        var restored = plan.Steps.MaxBy(step => step.Step)!;
        Assert.True(restored.StandClear);
        Assert.All(plan.Steps.Where(step => step != isolated), step => Assert.True(step.Start >= isolated.Free));
        Assert.All(plan.Steps.Where(step => step != restored), step => Assert.True(step.Free <= restored.Start || step.Start >= restored.Free));
    }

    [Fact]
    public void Two_lift_at_the_same_moment()
    {
        var plan = Checked.Stage("part lid \"lid\" { mass 40 kg held by 4 bolt as lid_bolts }", "undo lid_bolts remove lid { people 2 }")
            .Only.CreateCrewPlan(new CrewSize(2), Lists)!;
        Assert.Equal(["A", "B"], plan.Steps.Single(step => step.Step == 2).People);
        Assert.Empty(plan.NeedHelp);
    }

    [Fact]
    public void Who_is_alone_works_by_the_cards_and_is_told_where_help_is_needed()
    {
        var plan = Checked.Stage("part lid \"lid\" { mass 40 kg held by 4 bolt as lid_bolts }", "undo lid_bolts remove lid { people 2 }")
            .Only.CreateCrewPlan(new CrewSize(1), Lists)!;
        Assert.Equal([1, 2, 3, 4], plan.People[0].Steps);
        Assert.Equal([2, 3], plan.NeedHelp);
        Assert.Equal(plan.OnePerson, plan.Seconds);
    }

    [Fact]
    public void Nobody_works_on_what_another_takes_away()
    {
        var plan = Checked.Stage(
            "part box \"box\" { held by 4 bolt as box_bolts  part lamp \"lamp\" { held by 4 pin as lamp_pins } }",
            "release lamp_pins remove lamp undo box_bolts remove box").Only.CreateCrewPlan(new CrewSize(2), Lists)!;
        var taken = plan.Steps.Single(step => step.Step == 4);
        Assert.All(plan.Steps.Where(step => step.Step is 1 or 2), step => Assert.True(step.Free <= taken.Start || step.Start >= taken.Free));
    }

    [Fact]
    public void Only_the_certified_touch_what_is_marked()
    {
        var report = Checked.Stage(
            "part bag \"bag\" { hazard restraint held by 2 pin as bag_pins { time 60 s } } part lid \"lid\" { held by 4 bolt as lid_bolts { time 60 s } }",
            "undo lid_bolts remove lid release bag_pins remove bag").Only;
        var plan = report.CreateCrewPlan(new CrewSize(2, Certified: 1), Lists)!;
        var held = Assert.Single(plan.Certificates);
        Assert.Equal(["A"], held.People);
        Assert.All(plan.Steps.Where(step => held.Steps.Contains(step.Step)), step => Assert.Equal(["A"], step.People));
        Assert.Equal([3, 4], held.Steps.Take(2));
        Assert.Empty(plan.Uncertified);
        Assert.Empty(report.CreateCrewPlan(new CrewSize(2), Lists)!.Certificates);
    }

    private const string TwoPapers =
        """
        certificate gas "refrigerant certificate"
        certificate hv "work under voltage"
        clip pin "push pin"
        machine m "m" {
          part left "left cover" { certified gas  held by 2 pin as left_pins { time 60 s } }
          part right "right cover" { certified hv  held by 2 pin as right_pins { time 60 s } }
          part both "core" { certified gas, hv  held by 2 pin as core_pins { time 60 s } }
        }
        procedure p "p" on m {
          goal remove left  goal remove right  goal remove both
          stage "s" { release left_pins remove left release right_pins remove right release core_pins { people 2 } remove both { people 2 } }
        }
        """;

    [Fact]
    public void Each_certificate_is_held_by_one_of_those_who_do_what_asks_for_it()
    {
        var plan = Checked.Text(TwoPapers).Only.CreateCrewPlan(
            new CrewSize(2) { Named = ImmutableDictionary<string, ImmutableArray<int>>.Empty.Add("gas", [1]).Add("hv", [0]) }, Lists)!;
        Assert.Equal([("gas", "B"), ("hv", "A")], plan.Certificates.Select(held => (held.Name, held.People.Single())));
        Assert.All(plan.Certificates, held => Assert.All(held.Steps, number => Assert.Contains(held.People[0], plan.Steps.Single(step => step.Step == number).People)));
        Assert.Empty(plan.Uncertified);
    }

    [Fact]
    public void What_nobody_there_may_do_is_told()
    {
        var plan = Checked.Text(TwoPapers).Only.CreateCrewPlan(
            new CrewSize(2) { Named = ImmutableDictionary<string, ImmutableArray<int>>.Empty.Add("gas", [5]) }, Lists)!;
        Assert.Equal(plan.Certificates.Single(held => held.Name == "gas").Steps, plan.Uncertified);
        Assert.NotEmpty(plan.Uncertified);
    }

    [Fact]
    public void What_somebody_has_to_wait_for_is_said_and_keeps_the_order_without_a_clock()
    {
        foreach (var report in DemoLibrary.Report.Procedures.Where(report => report.IsProven).Where((_, at) => at % 5 == 0))
        {
            var plan = report.CreateCrewPlan(new CrewSize(2), new ListScheduler(500))!;
            var place = plan.Steps.Index().ToDictionary(step => step.Item.Step, step => step.Index);
            foreach (var step in plan.Steps)
            {
                Assert.All(step.WaitsFor, wait => Assert.True(place[wait.Step] < place[step.Step]));
            }

            Assert.True(plan.Seconds <= plan.OnePerson && plan.Seconds >= plan.CriticalPath.Seconds - 1e-6 && plan.Seconds >= plan.Least - 1e-6);
        }
    }

    [Fact]
    public void One_person_takes_what_the_pack_says()
    {
        foreach (var report in DemoLibrary.Report.Procedures.Where(report => report.IsProven))
        {
            CrewOrders orders = new(report, 1, new ListScheduler(1));
            var cards = orders.Job.ByTheCards();
            Assert.Empty(CrewCheck.Failures(orders.Problem, cards));
            Assert.Equal(report.CreatePlan()!.Times.OnePerson, cards.End(orders.Problem) / 1000.0, 1.0);
        }
    }
}
