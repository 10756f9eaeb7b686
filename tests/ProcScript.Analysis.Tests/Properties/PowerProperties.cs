using CsCheck;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>
/// What a refit may never do to people, told from the machine alone: power behind a guard that is off, or a part without the prop that bore
/// it. The sentences are those of the language's reference; the sequence of return is that of 29 CFR 1910.147 (e), "components intact" first
/// (read in two training texts).
/// </summary>
public sealed class PowerProperties
{
    [Fact]
    public void No_energy_comes_back_while_a_joint_on_it_is_open_or_a_part_that_hides_one_is_off_but_for_a_test()
    {
        var restored = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed, asymmetric: true);
                if (sample.Checked.Only.IsProven)
                {
                    Interlocked.Add(ref restored, Walk(sample));
                }
            },
            iter: Depth.Of(1000));
        Assert.True(restored > Depth.Least(200), $"only {restored} energies came back");
    }

    [Fact]
    public void A_test_switches_on_tries_and_switches_off_in_a_row_with_every_joint_on_it_whole()
    {
        var tested = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed);
                if (!sample.Checked.Only.IsProven || Later(sample) is not { } anchor)
                {
                    return;
                }

                var tried = sample.With(rest: $"refit {{ test \"T\" before {anchor} {{ power e0  check \"C\"  check \"D\" }} }}");
                if (tried.Checked.Only.IsProven)
                {
                    var verbs = tried.Refit.Actions.Where(action => action.Origin is TestStep).ToList();
                    Assert.Equal([Verb.Restore, Verb.Check, Verb.Check, Verb.Isolate], verbs.Select(action => action.Verb));
                    Assert.Equal([0, 1, 2, 3], verbs.Select(action => action.Number - verbs[0].Number));
                    Walk(tried);
                    Interlocked.Increment(ref tested);
                }
                else
                {
                    Assert.All(tried.Checked.Codes.Except(["PRC2002"]), code => Assert.StartsWith("PRC400", code, StringComparison.Ordinal));
                }
            },
            iter: Depth.Of(1400));
        Assert.True(tested > Depth.Least(100), $"only {tested} tests could be made");
    }

    [Fact]
    public void What_was_propped_when_it_came_out_goes_in_on_its_prop_and_keeps_it_until_all_that_holds_it_is_closed()
    {
        var propped = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed);
                if (sample.Checked.Only.IsProven)
                {
                    Interlocked.Add(ref propped, Props(sample));
                }
            },
            iter: Depth.Of(1400));
        Assert.True(propped > Depth.Least(100), $"only {propped} parts came out propped");
    }

    /// <summary>An action of the refit before which a test of the first energy might stand; null where that is never isolated.</summary>
    private static string? Later(Sample sample)
    {
        var place = sample.Refit.Actions.ToList().FindIndex(action => action is { Verb: Verb.Restore, Target.Name: "e0" });
        var anchors = sample.Refit.Actions.Take(place + 1).Where(action => action.Origin is InverseOf && action.Verb is not (Verb.Set or Verb.Uncap)).ToList();
        return place < 0 || anchors.Count == 0
            ? null
            : $"{anchors[anchors.Count / 2].Verb.ToString().ToLowerInvariant()} {anchors[anchors.Count / 2].Target!.Name}";
    }

    /// <summary>Performs the refit and looks at every energy that is live after each action; returns how many came back.</summary>
    private static int Walk(Sample sample)
    {
        var naive = sample.Stripped();
        var isolated = sample.Machine.Energies.Where(energy => naive[energy] == 0).ToList();
        var restored = 0;
        foreach (var action in sample.Refit.Actions)
        {
            if (action.Target is not null)
            {
                naive.Do(Sample.MoveOf(action));
            }

            restored += action.Verb == Verb.Restore ? 1 : 0;
            foreach (var energy in isolated.Where(energy => naive[energy] == 1))
            {
                var open = sample.Machine.Joints.Where(joint => joint.On == energy
                    && (joint.IsTemporary ? naive[joint] > 0 && !IsAmongTemporary(joint) && !naive.IsOnBench(joint) : naive[joint] < joint.Count || naive.IsSlack(joint)));
                Assert.True(!open.Any(), $"{energy.Name} is live after {action.Verb} {action.Target?.Name} with {string.Join(", ", open.Select(joint => joint.Name))} open\n{sample.Text}");
                if (action.Origin is not TestStep)
                {
                    var off = sample.Machine.Joints.Where(joint => joint.On == energy).SelectMany(Hiding).Where(part => !part.IsTemporary && naive.Place(part) != PartPlace.Fitted);
                    Assert.True(!off.Any(), $"{energy.Name} is live after {action.Verb} {action.Target?.Name} with {string.Join(", ", off.Select(part => part.Name))} off\n{sample.Text}");
                }
            }
        }

        return restored;
    }

    /// <summary>Whether a joint ties one temporary part to another: put together on the bench, they go on and off as one.</summary>
    private static bool IsAmongTemporary(Joint joint) => joint is { Owner.IsTemporary: true, Other: { IsTemporary: true } };

    /// <summary>The parts behind which a joint is, by its own words or those of what it lies in.</summary>
    private static IEnumerable<Part> Hiding(Joint joint)
    {
        var conditions = joint.Conditions.ToList();
        for (Part? part = joint.Owner; part is not null; part = part.Parent)
        {
            conditions.AddRange(part.Conditions);
        }

        return conditions.Where(condition => condition.State is NeededState.OutOfTheWay or NeededState.Out).Select(condition => (Part)condition.Item);
    }

    private static int Props(Sample sample)
    {
        var naive = new NaiveMachine(sample.Machine);
        var lost = new HashSet<int>();
        foreach (var action in sample.Strip.Actions)
        {
            if (action.Verb == Verb.Remove && naive.IsPropped((Part)action.Target!))
            {
                lost.Add(action.Number);
            }

            naive.Do(Sample.MoveOf(action));
        }

        foreach (var action in sample.Refit.Actions)
        {
            if (action is { Verb: Verb.Fit, Origin: InverseOf { Action.Number: var removal } } && lost.Contains(removal))
            {
                Assert.True(naive.IsPropped((Part)action.Target!), $"{action.Target!.Name} goes in without its prop\n{sample.Text}");
            }

            if (action.Verb == Verb.Unsupport)
            {
                var part = (Part)action.Target!;
                var loose = sample.Machine.Joints.Where(joint => joint.Role == JointRole.Held && !joint.IsTemporary && Holds(joint, part) && naive[joint] < joint.Count);
                Assert.True(!loose.Any(), $"{part.Name} loses its prop with {string.Join(", ", loose.Select(joint => joint.Name))} open\n{sample.Text}");
            }

            naive.Do(Sample.MoveOf(action));
        }

        return lost.Count;
    }

    private static bool Holds(Joint joint, Part part) => joint.Owner.IsWithin(part) != (joint.Other?.IsWithin(part) ?? false);
}
