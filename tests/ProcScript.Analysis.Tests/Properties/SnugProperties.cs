using CsCheck;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>What holds of rules that have fasteners go in finger-tight, and give them their torque later or once more.</summary>
public sealed class SnugProperties
{
    [Fact]
    public void A_snug_rule_splits_what_it_names_and_nothing_else()
    {
        var (split, exact) = (0, 0);
        Sample.Seeds().Sample(
            seed =>
            {
                if (Snugged(seed) is not var (plain, sample, joints))
                {
                    return;
                }

                var moves = sample.Refit.Actions.Select(Sample.MoveOf).ToList();
                Assert.True(Whole(plain.Refit.Actions).SequenceEqual(Whole(sample.Refit.Actions)), $"{Move.Words(plain.Refit.Actions.Select(Sample.MoveOf))}\n{Move.Words(moves)}\n{sample.Text}");
                Assert.All(joints, joint => Assert.DoesNotContain(moves, move => move.Verb == Verb.Fasten && move.Item.Name == joint));
                var naive = sample.Stripped();
                Assert.True(Sample.CanDo(naive, moves, refit: true), sample.Text);
                Assert.Equal(new NaiveMachine(sample.Machine).Describe(), naive.Describe());
                Interlocked.Increment(ref split);

                var expected = Expected(sample, joints);
                var isLoosened = sample.Strip.Actions.Any(action => action.Verb == Verb.Loosen && joints.Contains(action.Target!.Name));
                if ((joints.Length == 1 || !isLoosened) && Sample.CanDo(sample.Stripped(), expected, refit: true))
                {
                    Assert.True(expected.SequenceEqual(moves), $"{Move.Words(expected)}\n{Move.Words(moves)}\n{sample.Text}");
                    Interlocked.Increment(ref exact);
                }
            },
            iter: Depth.Of(2400));
        Assert.True(split > Depth.Least(200) && exact > Depth.Least(100), $"{split} split, {exact} exactly where the torque was wanted");
    }

    [Fact]
    public void The_order_of_declarations_changes_nothing()
    {
        var tried = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                if (Snugged(seed) is not var (_, sample, _))
                {
                    return;
                }

                var turned = sample.With(declarations: [.. sample.Declarations.Reverse()]);
                Assert.Equal(Lines(sample.Refit), Lines(turned.Refit));
                Interlocked.Increment(ref tried);
            },
            iter: Depth.Of(1200));
        Assert.True(tried > Depth.Least(200), $"only {tried} samples were tried");

        static IEnumerable<string> Lines(RefitRun refit) => refit.Actions.Select(action => $"{action.Verb} {action.Target!.Name} {action.Count}");
    }

    [Fact]
    public void A_torque_once_more_changes_nothing_else()
    {
        var tried = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var plain = Sample.Of(seed);
                if (!plain.Checked.Only.IsProven || Fastened(plain) is not [var joint, ..])
                {
                    return;
                }

                var sample = plain.With(rest: $"refit {{ retorque {joint} }}");
                if (sample.Checked.Only.IsProven)
                {
                    var moves = sample.Refit.Actions;
                    Assert.True(
                        plain.Refit.Actions.Select(Line).SequenceEqual(moves.Where(action => action.Verb != Verb.Retorque).Select(Line)),
                        $"{string.Join('\n', plain.Refit.Actions.Select(Line))}\n\n{string.Join('\n', moves.Select(Line))}\n{sample.Text}");
                    var at = moves.ToList().FindIndex(action => action.Verb == Verb.Retorque);
                    Assert.DoesNotContain(moves.Skip(at), action => action.Target?.Name == joint && action.Verb is Verb.Fasten or Verb.Tighten);
                    Interlocked.Increment(ref tried);
                }
            },
            iter: Depth.Of(1200));
        Assert.True(tried > Depth.Least(200), $"only {tried} samples were tried");

        static string Line(PerformedAction action) => $"{action.Verb} {action.Target!.Name} {action.Count}";
    }

    /// <summary>A proven procedure, and the same with a snug rule for one or two joints, where that is proven too.</summary>
    private static (Sample Plain, Sample Sample, string[] Joints)? Snugged((int Parts, uint Machine, uint Strip) seed)
    {
        var plain = Sample.Of(seed);
        if (!plain.Checked.Only.IsProven || Fastened(plain) is not [_, ..] fastened)
        {
            return null;
        }

        string[] joints = [.. fastened.Take(1 + (int)(seed.Strip % 2))];
        var sample = plain.With(rest: $"refit {{ snug {string.Join(", ", joints)} }}");
        return sample.Checked.Only.IsProven ? (plain, sample, joints) : null;
    }

    private static string[] Fastened(Sample plain) =>
        [.. plain.Refit.Actions.Where(action => action.Verb == Verb.Fasten).Select(action => action.Target!.Name).Distinct()];

    /// <summary>
    /// The actions as they would be without the rule, in no order. Not what is set: a control that a joint wants in a position is set once
    /// more where the torque comes later.
    /// </summary>
    private static IEnumerable<string> Whole(IEnumerable<PerformedAction> actions) => actions
        .Where(action => action.Origin is not Tightened && action.Verb != Verb.Set)
        .Select(action => $"{(action.Verb == Verb.Snug ? Verb.Fasten : action.Verb)} {action.Target!.Name} {action.Count}")
        .Order(StringComparer.Ordinal);

    /// <summary>The exact reverse, finger-tight, with the torque right after the last fastener that it waits for.</summary>
    private static List<Move> Expected(Sample sample, string[] joints)
    {
        var moves = sample.Reverse()
            .Select(move => move.Verb == Verb.Fasten && joints.Contains(move.Item.Name) ? move with { Verb = Verb.Snug } : move)
            .ToList();
        var torques = new List<(int After, Move Move)>();
        foreach (var joint in moves.Where(move => move.Verb == Verb.Snug).Select(move => (Joint)move.Item).Distinct())
        {
            if (moves.Last(move => move.Item == joint && move.Verb is Verb.Snug or Verb.Tighten).Verb == Verb.Snug)
            {
                var after = moves.FindLastIndex(move => move.Item is Joint other
                    && (joints.Contains(other.Name) || (other.Role == JointRole.Held && other.Owner == joint.Owner)));
                var pieces = moves.Where(move => move.Verb == Verb.Snug && move.Item == joint).Sum(move => move.Value);
                torques.Add((after, new Move(Verb.Tighten, joint, pieces)));
            }
        }

        return [.. moves.Index().SelectMany(move => torques.Where(torque => torque.After == move.Index).Select(torque => torque.Move).Prepend(move.Item))];
    }
}
