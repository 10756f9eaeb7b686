using CsCheck;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>What holds for every plan.</summary>
public class AnyPlanTests
{
    [Fact]
    public void Every_bag_is_filled_and_emptied_exactly() => All(plan =>
    {
        var steps = plan.AllSteps();
        foreach (var bag in plan.Bags)
        {
            foreach (var line in bag.Contents)
            {
                var (off, on) = (steps[line.StripStep - 1], steps[line.RefitStep - 1]);
                Assert.Equal((line.Count, line.Count), (off.Count, on.Count));
                Assert.Equal((off.Number, on.Number), (on.Mirror, off.Mirror));
                Assert.Contains(bag.Number, off.Bags);
                Assert.Contains(bag.Number, on.Bags);
            }

            Assert.Equal(bag.Contents.Max(line => line.RefitStep), bag.EmptyAt);
        }

        var filled = plan.Strip.SelectMany(card => card.Steps).Sum(step => step.Bags.Length);
        var emptied = plan.Refit.SelectMany(card => card.Steps).Sum(step => step.Bags.Length);
        Assert.Equal((plan.Bags.Sum(bag => bag.Contents.Length), filled), (filled, emptied));
        Assert.Equal(
            plan.Bags.Select(bag => bag.Number),
            plan.Refit.SelectMany(card => card.Steps).SelectMany(step => step.EmptiesBags).Order());
    });

    [Fact]
    public void No_bag_holds_look_alikes() => All(plan => Assert.All(
        plan.Bags,
        bag => Assert.True(bag.Contents
            .Select(line => line.Title)
            .Where(title => title.StartsWith("M8", StringComparison.Ordinal))
            .Distinct()
            .Count() < 2)));

    [Fact]
    public void Every_mark_is_made_before_it_has_to_line_up_and_both_stand_once()
    {
        var marks = 0;
        All(plan =>
        {
            var steps = plan.AllSteps();
            foreach (var (step, mark) in steps.SelectMany(step => step.SeeMarks.Select(mark => (step, mark))))
            {
                Assert.True(mark.Step < step.Number);
                Assert.Contains(mark.Text, steps[mark.Step - 1].Marks);
                Interlocked.Increment(ref marks);
            }

            Assert.Equal(steps.Sum(step => step.Marks.Length), steps.Sum(step => step.SeeMarks.Length));
        });
        Assert.True(marks > 20, $"only {marks} marks");
    }

    [Fact]
    public void What_is_kept_in_order_has_a_line_both_ways_and_a_bag_of_its_own() => All(plan =>
    {
        Assert.All(plan.Bags.Where(bag => bag.Contents.Any(line => line.InOrder)), bag => Assert.Single(bag.Contents));
        Assert.All(plan.Bags.SelectMany(bag => bag.Contents), line => Assert.Equal(line.Title == "M8 × 60 bolt", line.InOrder));
        var steps = plan.AllSteps();
        Assert.Equal(
            steps.Count(step => step.Ticks.Any(tick => tick.StartsWith("Keep in order", StringComparison.Ordinal))),
            steps.Count(step => step.Ticks.Any(tick => tick.EndsWith("its own place.", StringComparison.Ordinal))));
    });

    [Fact]
    public void Every_piece_that_comes_off_lies_in_a_bag_stays_on_its_part_or_is_scrap() => All(plan =>
    {
        var bagged = plan.Bags.SelectMany(bag => bag.Contents).ToLookup(line => line.StripStep, line => line.Count);
        var stays = plan.Staying.SelectMany(one => one.OffAt).ToHashSet();
        var off = plan.AllSteps().Where(step => step is { Verb: "undo" or "release" or "unplug" or "disconnect" or "cut", OffAt: 0, OnSince: 0, Count: > 0 } && IsOfTheMachine(plan, step)).ToList();
        Assert.All(off, step => Assert.Equal(1, (bagged[step.Number].Any() ? 1 : 0) + (stays.Contains(step.Number) ? 1 : 0) + (IsAllScrap(step) ? 1 : 0)));
        Assert.Equal(
            off.Where(step => stays.Contains(step.Number)).Sum(step => step.Count - step.Renewed),
            plan.Staying.Sum(one => one.Count));
        Assert.All(off.Where(step => bagged[step.Number].Any()), step => Assert.Equal(step.Count - step.Renewed, bagged[step.Number].Sum()));
    });

    [Fact]
    public void Scrap_and_new_name_each_other() => All(plan =>
    {
        var steps = plan.AllSteps();
        foreach (var step in steps)
        {
            Assert.All(step.NewParts.Where(part => part.Replaces > 0), part => Assert.Contains(step.Number, steps[part.Replaces - 1].NewAt));
            Assert.All(step.NewAt, at => Assert.Contains(steps[at - 1].NewParts, part => part.Replaces > 0));
        }
    });

    /// <summary>What is on for the job alone is counted as temporary.</summary>
    private static bool IsOfTheMachine(Plan plan, PlanStep step) => step.Mirror == 0 || plan.AllSteps()[step.Mirror - 1].Number > step.Number;

    private static bool IsAllScrap(PlanStep step) => step.Scrap.Length > 0 && step.Scrap.StartsWith($"{step.Count} × ", StringComparison.Ordinal) && step.Text.EndsWith(step.Scrap.Split(", ")[0], StringComparison.Ordinal);

    [Fact]
    public void Locks_are_scrap_and_never_in_a_bag() => All(plan =>
    {
        Assert.DoesNotContain(plan.Bags.SelectMany(bag => bag.Contents), line => line.Title == "split pin");
        var locks = plan.AllSteps().Where(step => step.Text.EndsWith("split pin", StringComparison.Ordinal)).ToList();
        Assert.All(locks, step => Assert.True(step.Verb == "release" ? step.Scrap.Length > 0 : step.NewParts.Length == 1, step.Text));
        Assert.Equal(locks.Where(step => step.Verb == "engage").Sum(step => step.Count), plan.Orders.Where(line => line.Title == "split pin").Sum(line => line.Count));
    });

    [Fact]
    public void Every_step_of_the_strip_is_undone_by_one_of_the_refit() => All(plan =>
    {
        var steps = plan.AllSteps();
        Assert.All(plan.Strip.SelectMany(card => card.Steps), step => Assert.Equal(step.Number, steps[step.Mirror - 1].Mirror));
        Assert.All(plan.Refit.SelectMany(card => card.Steps), step => Assert.Equal(step.Number, steps[step.Mirror - 1].Mirror));
    });

    [Fact]
    public void Steps_are_numbered_without_a_gap() =>
        All(plan => Assert.Equal(Enumerable.Range(1, plan.AllSteps().Count), plan.AllSteps().Select(step => step.Number)));

    [Fact]
    public void Times_add_up_and_two_never_take_longer_than_one() => All(plan =>
    {
        var times = plan.Times;
        Assert.All(plan.AllSteps(), step => Assert.True(step.Seconds >= 0));
        Assert.Equal(times.OnePerson, times.Strip + times.Work + times.Refit, 6);
        Assert.Equal(times.Strip, plan.Strip.Sum(card => card.Seconds), 6);
        Assert.Equal(times.Refit, plan.Refit.Sum(card => card.Seconds), 6);
        Assert.True(times.Crew <= times.OnePerson);
        Assert.True(times.Crew >= plan.AllSteps().Where(step => !step.InBackground).Sum(step => step.Seconds) / 2 - 1e-6);
    });

    [Fact]
    public void What_waits_comes_after_what_it_waits_for() => All(plan =>
    {
        var steps = plan.AllSteps();
        Assert.All(steps, step => Assert.All(step.WaitsFor, before => Assert.True(before < step.Number && steps[before - 1].InBackground)));
    });

    [Fact]
    public void A_plan_made_twice_is_the_same() => AnyProcedure.Gen.Sample(
        text => Assert.Equal(Describe(PlanOf.Text(text)), Describe(PlanOf.Text(text))),
        iter: 30);

    private static void All(Action<Plan> holds) => AnyProcedure.Gen.Sample(text => holds(PlanOf.Text(text)), iter: 100);

    private static IEnumerable<string> Describe(Plan plan) =>
    [
        plan.Revision,
        plan.Times.ToString(),
        .. plan.AllSteps().Select(step => $"{step.Number} {step.Text} {string.Join(',', step.Bags)} {string.Join(',', step.Tools)}"),
        .. plan.Bags.SelectMany(bag => bag.Contents).Select(line => line.ToString()),
        .. plan.Orders.Select(line => $"{line.Title} {line.Count}"),
        .. plan.Map.Edges.Select(edge => edge.ToString()),
    ];
}
