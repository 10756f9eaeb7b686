using ProcScript.Analysis.Reaching.Search;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>The bound by cuts.</summary>
public sealed class LandmarkBoundTests
{
    /// <summary>0 is wanted, and needs 1 or 2; both need 3, which is dear.</summary>
    private static readonly ClosureProblem Shared = new([1, 2, 5, 7], [[[1, 2]], [[3]], [[3]], []], [[], [], [], []], [0]);

    [Fact]
    public void What_all_ways_need_counts_once() => Assert.Equal(2 + 7, Bound(Shared, double.PositiveInfinity, long.MaxValue));

    [Fact]
    public void It_ends_once_it_is_enough_or_the_work_is_too_much()
    {
        Assert.InRange(Bound(Shared, 1, long.MaxValue), 1, 9);
        Assert.Equal(0, Bound(Shared, double.PositiveInfinity, most: 0));
    }

    [Fact]
    public void What_cannot_be_served_costs_without_end() =>
        Assert.Equal(double.PositiveInfinity, Bound(new ClosureProblem([0, 1], [[[1]], [[1]]], [[], []], [0]), double.PositiveInfinity, long.MaxValue));

    [Fact]
    public void Of_two_things_that_are_needed_both_count()
    {
        // 0 needs 1 or 2, and 3 or 4.
        ClosureProblem problem = new([0, 4, 3, 2, 6], [[[1, 2], [3, 4]], [], [], [], []], [[], [], [], [], []], [0]);

        Assert.Equal(3 + 2, Bound(problem, double.PositiveInfinity, long.MaxValue));
    }

    /// <summary>The bound with what is wanted taken, and paid.</summary>
    private static double Bound(ClosureProblem problem, double enough, long most)
    {
        var state = new sbyte[problem.Count];
        state[0] = 1;
        return new LandmarkBound(problem).Of(state, [0], enough, most);
    }
}
