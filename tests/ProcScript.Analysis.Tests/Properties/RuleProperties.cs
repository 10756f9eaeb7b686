using CsCheck;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Properties;

public sealed class RuleProperties
{
    [Fact]
    public void A_refit_keeps_its_rules_or_shows_a_circle_that_is_one()
    {
        var (kept, circles) = (0, 0);
        Sample.Seeds().Sample(
            seed =>
            {
                var plain = Sample.Of(seed);
                if (!plain.Checked.Only.IsProven || plain.Refit.Actions.Length < 3)
                {
                    return;
                }

                var sample = plain.With(rest: Rules(plain, seed.Strip, 1 + (int)(seed.Machine % 4)));
                if (sample.Checked.Only.IsProven)
                {
                    AssertKept(sample);
                    Interlocked.Increment(ref kept);
                }
                else
                {
                    Assert.All(
                        sample.Checked.Codes.Except(["PRC2002"]),
                        code => Assert.True(code is "PRC4003" or "PRC4004", $"{string.Join('\n', sample.Checked.Findings)}\n{sample.Text}"));
                    Interlocked.Increment(ref circles);
                }
            },
            iter: Depth.Of(700));
        Assert.True(kept > Depth.Least(100) && circles > Depth.Least(40), $"{kept} kept, {circles} circles");
    }

    [Fact]
    public void Where_a_circle_is_shown_no_order_at_all_would_do()
    {
        var tried = 0;
        Sample.Seeds(parts: 4).Sample(
            seed =>
            {
                var plain = Sample.Of(seed, steps: 7, choices: false);
                if (!plain.Checked.Only.IsProven || plain.Refit.Actions.Length < 3 || !plain.IsPlain)
                {
                    return;
                }

                var sample = plain.With(rest: Rules(plain, seed.Strip, 2));
                var rules = sample.Strip.Procedure.Rules.Cast<OrderRule>().ToList();
                var working = Permutations.Working(
                    [.. sample.Reverse()],
                    begun => Keeps(begun, rules) && Sample.CanDo(sample.Stripped(), begun, refit: true));
                Assert.Equal(sample.Checked.Only.IsProven, working.Any());
                Interlocked.Increment(ref tried);
            },
            iter: Depth.Of(1000));
        Assert.True(tried > Depth.Least(40), $"only {tried} samples were tried");
    }

    [Fact]
    public void Each_edge_of_a_circle_holds_by_itself()
    {
        var edges = 0;
        Sample.Seeds(parts: 6).Sample(
            seed =>
            {
                var plain = Sample.Of(seed, steps: 16);
                if (!plain.Checked.Only.IsProven || plain.Refit.Actions.Length < 3)
                {
                    return;
                }

                var sample = plain.With(rest: Rules(plain, seed.Strip, 2));
                if (Circle(sample) is not { IsEmpty: false } circle)
                {
                    return;
                }

                Assert.Equal(circle.Select(edge => edge.Later.Action), circle.Skip(1).Append(circle[0]).Select(edge => edge.Earlier.Action));
                Assert.IsType<Ruled>(circle[0].Reason);
                // Work that stays on the bench might do as well in the machine; the label of such an edge says that it is about the bench. And
                // what is temporary goes on while something is on the bench, too. The refit keeps to the way of a choice that the strip has used, where another might do.
                foreach (var edge in circle.Where(edge => edge.Reason switch
                {
                    Enables enables => Binds(enables.Need, edge.Later.Action.Target),
                    Spoils spoils => Binds(spoils.Need, edge.Earlier.Action.Target),
                    _ => false,
                }))
                {
                    // Turned round, the exact reverse gets stuck.
                    Assert.False(CanTurn(plain, edge), $"{edge}\n{sample.Text}");
                    Interlocked.Increment(ref edges);
                }
            },
            iter: Depth.Of(900));
        Assert.True(edges > Depth.Least(60), $"only {edges} edges were tried");
    }

    private static bool Binds(Need need, MachineItem? target) =>
        need is not PartOnBench && !need.Item.IsTemporary && target is not { IsTemporary: true } && need.Declared?.State != NeededState.AnyOf
        // Energies, fluids and controls bind in the machine alone: what lies in a part might be put in while that is on the bench.
        && (need.Item is Part or Joint || target is not (Part { Parent: not null } or Joint { Owner.Parent: not null }));

    private static System.Collections.Immutable.ImmutableArray<CircleEdge> Circle(Sample sample) =>
        sample.Checked.Only.IsProven ? [] : sample.Attempt().Failures.Select(failure => failure switch
        {
            RuleCircle circle => circle.Edges,
            PowerBeforeClosing power => power.Edges,
            _ => [],
        }).First();

    /// <summary>Whether the exact reverse still works with the later of two actions moved right before the earlier.</summary>
    private static bool CanTurn(Sample plain, CircleEdge edge)
    {
        var moves = plain.Refit.Actions.ToList();
        var (earlier, later) = (moves.FindIndex(action => Is(action, edge.Earlier)), moves.FindIndex(action => Is(action, edge.Later)));
        if (earlier < 0 || later < earlier)
        {
            return false;
        }

        var moved = moves[later];
        moves.RemoveAt(later);
        moves.Insert(earlier, moved);
        return Sample.CanDo(plain.Stripped(), moves.Take(later + 1).Select(Sample.MoveOf), refit: true);
    }

    private static bool Is(PerformedAction action, RefitStep step) =>
        action.Origin is InverseOf inverse && step.Origin is InverseOf other && inverse.Action.Number == other.Action.Number;

    private static void AssertKept(Sample sample)
    {
        var moves = sample.Refit.Actions.Select(Sample.MoveOf).ToList();
        Assert.True(Keeps(moves, sample.Strip.Procedure.Rules.Cast<OrderRule>()), sample.Text);
        var naive = sample.Stripped();
        Assert.True(Sample.CanDo(naive, moves, refit: true), sample.Text);
        Assert.Equal(new NaiveMachine(sample.Machine).Describe(), naive.Describe());
    }

    /// <summary>Whether no action that a rule puts earlier comes after one that it puts later.</summary>
    private static bool Keeps(IReadOnlyList<Move> moves, IEnumerable<OrderRule> rules)
    {
        foreach (var rule in rules)
        {
            var later = moves.ToList().FindIndex(move => move.Verb == rule.Later.Verb && move.Item == rule.Later.Target);
            var earlier = moves.ToList().FindLastIndex(move => move.Verb == rule.Earlier.Verb && move.Item == rule.Earlier.Target);
            var missing = moves.Count - 1;
            if (later >= 0 && (earlier > later || (earlier < 0 && later <= missing)))
            {
                return false;
            }
        }

        return true;
    }

    private static string Rules(Sample sample, uint seed, int count)
    {
        var random = new Random((int)seed);
        var actions = sample.Refit.Actions.Where(action => action.Origin is InverseOf && action.Verb != Verb.Uncap).ToList();
        var rules = Enumerable.Range(0, count).Select(_ =>
        {
            var (first, second) = (actions[random.Next(actions.Count)], actions[random.Next(actions.Count)]);
            return first.Target == second.Target ? "" : $"{Word(first)} {first.Target!.Name} {(random.Next(2) == 0 ? "before" : "after")} {Word(second)} {second.Target!.Name}\n";
        });
        return $"refit {{\n{string.Concat(rules)}}}";
    }

    private static string Word(PerformedAction action) => action.Verb.ToString().ToLowerInvariant();
}
