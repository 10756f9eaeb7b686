using CsCheck;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Properties;

public sealed class StripProperties
{
    [Fact]
    public void Strip_takes_out_any_part_that_is_not_stuck()
    {
        var (stripped, refused, stuck) = (0, 0, 0);
        Sample.Seeds().Sample(
            seed =>
            {
                var declarations = RandomMachine.Declarations(seed.Parts, seed.Machine);
                var machine = Sample.Bind(declarations);
                var part = machine.Parts[(int)(seed.Strip % machine.Parts.Length)];
                if (part.IsTemporary)
                {
                    // It is out.
                    return;
                }

                var sample = Sample.Make(declarations, [$"strip {part.Name}"]);
                if (sample.Strip.IsSound)
                {
                    var naive = sample.Stripped();
                    Assert.Equal(States.PartPlace.Out, naive.Place((Part)sample.Machine.Items[part.Name]));
                    // The hole that it leaves may be capped after it.
                    var last = sample.Strip.Actions.Last(action => action.Origin is ExpandedStep);
                    Assert.Equal(Verb.Remove, last.Verb);
                    Assert.Equal(part.Name, last.Target!.Name);
                    Interlocked.Increment(ref stripped);
                }
                else
                {
                    // Stuck in the machine, which is told there, or needs that exclude each other.
                    Assert.All(sample.Checked.Codes, code => Assert.True(code is "PRC2002" or "PRC3016", sample.Text));
                    Interlocked.Increment(ref sample.Checked.Codes.Contains("PRC3016") ? ref refused : ref stuck);
                }
            },
            iter: Depth.Of(1400));
        Assert.True(stripped > 5 * refused, $"{stripped} stripped, {refused} refused, {stuck} stuck");
    }

    [Fact]
    public void What_is_told_to_be_stuck_never_moves()
    {
        var stuck = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed, asymmetric: true, steps: 60);
                var told = sample.Checked.Report.Findings.Where(found => found.Finding.Rule.Code == "PRC2002")
                    .Select(found => sample.Checked.At(found.Finding.Primary).Split(' ')[^1])
                    // A temporary part that cannot be fitted and fastened may be fitted all the same.
                    .Where(name => !sample.Machine.Parts.Any(part => part.Name == name && part.IsTemporary))
                    .ToHashSet();
                var moved = sample.Strip.Actions.FirstOrDefault(action => action.Verb is not (Verb.Support or Verb.Aside or Verb.Loosen)
                    && told.Contains(action.Target!.Name) && (action.Target is not Joint joint || action.Count == joint.Count));
                Assert.True(moved is null, $"{moved?.Verb} {moved?.Target?.Name}, which is told to be stuck\n{sample.Text}");
                Interlocked.Add(ref stuck, told.Count);
            },
            iter: Depth.Of(1400));
        Assert.True(stuck > Depth.Least(50), $"only {stuck} items were told to be stuck");
    }

    [Fact]
    public void The_order_of_declarations_changes_nothing() => Sample.Seeds().Sample(
        seed =>
        {
            var sample = Sample.Of(seed);
            var random = new Random((int)seed.Machine);
            var shuffled = sample.With(declarations: [.. sample.Declarations.OrderBy(_ => random.Next())]);
            Assert.Equal(sample.Checked.Codes.Order(), shuffled.Checked.Codes.Order());
            Assert.Equal(Checked.Lines(sample.Strip.Actions), Checked.Lines(shuffled.Strip.Actions));
            Assert.Equal(
                Checked.Lines(sample.Outcome.Refit?.Actions ?? []),
                Checked.Lines(shuffled.Outcome.Refit?.Actions ?? []));
        },
        iter: Depth.Of(800));

    [Fact]
    public void A_step_left_out_is_missed_by_name_or_was_not_needed()
    {
        var missed = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed);
                if (sample.Steps.Count == 0)
                {
                    return;
                }

                var left = (int)(seed.Machine % sample.Steps.Count);
                // What the compiler caps is no step of the author's.
                var written = sample.Strip.Actions.Where(action => action.Origin is WrittenStep).ToList();
                var number = written[left].Number;
                var item = written[left].Target!;
                var shorter = sample.With(steps: [.. sample.Steps.Take(left), .. sample.Steps.Skip(left + 1)]);
                var needs = sample.Strip.Actions.Skip(number + 1).SelectMany(action => action.Needs).Where(need => need.MetBy == number).ToList();
                if (shorter.Checked.Only.IsProven)
                {
                    Assert.True(Sample.CanDo(new NaiveMachine(shorter.Machine), shorter.Strip.Actions.Select(Sample.MoveOf), refit: false));
                    return;
                }

                if (shorter.Checked.Codes.Any(code => code.StartsWith("PRC3", StringComparison.Ordinal)))
                {
                    // What is still in the machine for want of a bench meets whatever is in the way there.
                    Assert.NotEmpty(needs);
                    Assert.True(
                        needs.Any(need => need.Need is PartOnBench)
                            || shorter.Checked.Report.Findings.Select(found => found.Finding).Any(finding =>
                                $"{finding.Message} {finding.Label} {finding.Help}".Contains(item.Name, StringComparison.Ordinal)),
                        shorter.Text);
                    Interlocked.Increment(ref missed);
                }
            },
            iter: Depth.Of(1400));
        Assert.True(missed > Depth.Least(200), $"only {missed} steps were missed");
    }
}
