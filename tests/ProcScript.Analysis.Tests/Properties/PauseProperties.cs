using CsCheck;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>A pause and a record change nothing, wherever they stand: with them a job is proven as without, and goes back the same way.</summary>
public sealed class PauseProperties
{
    [Fact]
    public void Strip_and_refit_are_the_same_with_pauses_and_records_between()
    {
        var paused = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed, asymmetric: true);
                var stops = sample.With(steps: Between(sample.Steps, seed.Strip), rest: Rules(sample));
                Assert.Equal(sample.Checked.Only.IsProven, stops.Checked.Only.IsProven);
                Assert.Equal(Moves(sample.Strip.Actions), Moves(stops.Strip.Actions));
                if (sample.Checked.Only.IsProven)
                {
                    Assert.Equal(Moves(sample.Refit.Actions), Moves(stops.Refit.Actions));
                    Interlocked.Increment(ref paused);
                }
            },
            iter: Depth.Of(800));
        Assert.True(paused > Depth.Least(300), $"only {paused} samples were proven");
    }

    [Fact]
    public void A_hand_over_tells_of_each_energy_that_is_off_and_each_part_that_is_out_or_aside()
    {
        var told = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed);
                var half = sample.Steps.Count / 2;
                var stops = sample.With(steps: [.. sample.Steps.Take(half), "pause \"P\"", .. sample.Steps.Skip(half)]);
                if (!stops.Checked.Only.IsProven)
                {
                    return;
                }

                var over = Assert.Single(Steps(stops.Checked.Only.CreatePlan()!), step => step.Verb == "pause").HandOver!;
                // Caps are steps too, and nobody wrote them.
                var moved = stops.Strip.Actions.TakeWhile(action => action.Verb != Verb.Pause).ToList();
                Assert.Equal(moved.Count, over.Done);
                Assert.Equal(
                    moved.Where(action => action.Verb is Verb.Remove or Verb.Aside && action.Target is Part { IsTemporary: false }).Select(action => action.Target!.Title).Distinct().Order(StringComparer.Ordinal),
                    Lines(over, "out").Concat(Lines(over, "aside")).Select(line => line.Text).Order(StringComparer.Ordinal));
                Assert.Equal(
                    moved.Count(action => action.Verb == Verb.Isolate),
                    Lines(over, "energy").Count(line => line.Text.Contains(": isolated", StringComparison.Ordinal)));
                Interlocked.Add(ref told, over.Sections.Sum(section => section.Lines.Length));
            },
            iter: Depth.Of(800));
        Assert.True(told > Depth.Least(1000), $"only {told} lines were told");
    }

    /// <summary>The steps with a pause or a record before some of them.</summary>
    private static List<string> Between(IReadOnlyList<string> steps, uint seed)
    {
        var random = new Random(unchecked((int)seed));
        return [.. steps.SelectMany(step => random.Next(4) switch
        {
            0 => new[] { "pause \"P\" { time 12 h }", step },
            1 => new[] { "record \"R\"", step },
            _ => new[] { step },
        })];
    }

    /// <summary>A pause after the first action of the refit, where there is a single such action, and a record at the end.</summary>
    private static string Rules(Sample sample)
    {
        var last = sample.Strip.Actions.LastOrDefault(action => ActionTable.Row(action.Verb).Inverse is not null);
        var rule = last?.Verb == Verb.Remove ? $"pause \"P\" after fit {last.Target!.Name}  " : "";
        return $"refit {{ {rule}record \"R\" }}";
    }

    private static IEnumerable<(Verb, string, int)> Moves(IEnumerable<PerformedAction> actions) => actions
        .Where(action => action.Verb is not (Verb.Pause or Verb.Record))
        .Select(Sample.MoveOf)
        .Select(move => (move.Verb, move.Item.Name, move.Value));

    private static IEnumerable<PlanStep> Steps(Plan plan) => plan.Strip.Add(plan.Work).AddRange(plan.Refit).SelectMany(stage => stage.Steps);

    private static IEnumerable<PlanHandOverLine> Lines(PlanHandOver over, string sort) =>
        over.Sections.Where(section => section.Sort == sort).SelectMany(section => section.Lines);
}
