using CsCheck;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.Runs;

namespace ProcScript.Analysis.Tests.Properties;

public sealed class RefitProperties
{
    [Fact]
    public void What_the_plain_reading_of_the_rules_allows_has_no_finding_in_the_strip() => Sample.Seeds().Sample(
        seed => Assert.DoesNotContain(
            Sample.Of(seed, asymmetric: true).Checked.Codes,
            code => code.StartsWith("PRC3", StringComparison.Ordinal)),
        iter: Depth.Of(1000));

    [Fact]
    public void Without_rules_the_refit_is_the_exact_reverse_wherever_that_can_be_done()
    {
        var exact = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed);
                var naive = sample.Stripped();
                if (Sample.CanDo(naive, sample.Reverse(), refit: true))
                {
                    var (reverse, refit) = (sample.Reverse().ToList(), sample.Refit.Actions.Select(Sample.MoveOf).ToList());
                    Assert.True(reverse.SequenceEqual(refit), $"{Move.Words(reverse)}\n{Move.Words(refit)}\n{sample.Text}");
                    Interlocked.Increment(ref exact);
                }
            },
            iter: Depth.Of(2000));
        Assert.True(exact > Depth.Least(800), $"only {exact} samples could be reversed exactly");
    }

    [Fact]
    public void A_proven_refit_can_be_done_on_the_naive_machine_and_ends_where_the_strip_began()
    {
        var proven = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed, asymmetric: true);
                if (sample.Checked.Only.IsProven)
                {
                    var naive = sample.Stripped();
                    Assert.True(Sample.CanDo(naive, sample.Refit.Actions.Select(Sample.MoveOf), refit: true), sample.Text);
                    Assert.Equal(new NaiveMachine(sample.Machine).Describe(), naive.Describe());
                    Interlocked.Increment(ref proven);
                }
                else
                {
                    Assert.All(
                        sample.Checked.Codes.Except(["PRC2002"]),
                        code => Assert.StartsWith("PRC400", code, StringComparison.Ordinal));
                }
            },
            iter: Depth.Of(1400));
        Assert.True(proven > Depth.Least(600), $"only {proven} samples were proven");
    }

    [Fact]
    public void Every_order_that_keeps_the_edges_works_the_same() => Sample.Seeds().Sample(
        seed =>
        {
            var sample = Sample.Of(seed);
            if (!sample.Checked.Only.IsProven)
            {
                return;
            }

            var start = new NaiveMachine(sample.Machine);
            var stripped = sample.Stripped();
            Assert.True(Sample.CanDo(start, Shuffle(sample.Strip.Actions, sample.Strip.Order, seed.Strip), refit: false), sample.Text);
            Assert.Equal(stripped.Describe(), start.Describe());
            Assert.True(Sample.CanDo(stripped, Shuffle(sample.Refit.Actions, sample.Refit.Order, seed.Strip), refit: true), sample.Text);
            Assert.Equal(new NaiveMachine(sample.Machine).Describe(), stripped.Describe());
        },
        iter: Depth.Of(1400));

    [Fact]
    public void There_are_as_many_valid_refits_as_valid_strips()
    {
        var counted = 0;
        Sample.Seeds(parts: 5).Sample(
            seed =>
            {
                var sample = Sample.Of(seed, steps: 12, choices: false);
                var naive = sample.Stripped();
                if (sample.IsPlain && sample.IsSymmetrical && Sample.CanDo(naive, sample.Reverse(), refit: true))
                {
                    Assert.Equal(ValidOrders.Of(sample.Strip), ValidOrders.Of(sample.Refit));
                    Interlocked.Increment(ref counted);
                }
            },
            iter: Depth.Of(4000));
        Assert.True(counted > Depth.Least(9), $"only {counted} samples were counted");
    }

    [Fact]
    public void The_number_of_valid_orders_is_that_of_all_permutations_which_work()
    {
        var counted = 0;
        Sample.Seeds(parts: 4).Sample(
            seed =>
            {
                var sample = Sample.Of(seed, steps: 7, choices: false);
                if (sample.IsPlain)
                {
                    var moves = sample.Strip.Actions.Select(Sample.MoveOf).ToArray();
                    Assert.Equal(
                        Permutations.Count(moves, prefix => Sample.CanDo(new NaiveMachine(sample.Machine), prefix, refit: false)),
                        ValidOrders.Of(sample.Strip));
                    Interlocked.Increment(ref counted);
                }
            },
            iter: Depth.Of(800));
        Assert.True(counted > Depth.Least(40), $"only {counted} samples were counted");
    }

    private static IEnumerable<Move> Shuffle(IReadOnlyList<PerformedAction> actions, IEnumerable<OrderEdge> order, uint seed)
    {
        var random = new Random((int)seed);
        var before = order.ToLookup(edge => edge.Later, edge => edge.Earlier);
        var open = actions.ToList();
        var done = new HashSet<int>();
        while (open.Count > 0)
        {
            var ready = open.Where(action => before[action.Number].All(done.Contains)).ToList();
            var next = ready[random.Next(ready.Count)];
            open.Remove(next);
            done.Add(next.Number);
            yield return Sample.MoveOf(next);
        }
    }
}
