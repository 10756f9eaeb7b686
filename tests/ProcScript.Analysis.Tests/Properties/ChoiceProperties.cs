using CsCheck;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>Choices, ways out, and calls that leave out what is done already.</summary>
public sealed class ChoiceProperties
{
    [Fact]
    public void A_call_where_needed_after_the_first_steps_of_it_is_the_procedure_itself()
    {
        var (left, whole) = (0, 0);
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed);
                if (ComesBackToWhatWas(sample))
                {
                    // What was so in between is not so any more.
                    return;
                }

                var done = (int)(seed.Machine % (uint)(sample.Steps.Count + 1));
                var both = Checked.Text(
                    RandomMachine.Text(sample.Declarations)
                    + Procedure("q", $"stage \"S\" {{ {string.Join('\n', sample.Steps)} }}")
                    + Procedure("p", $"stage \"A\" {{ {string.Join('\n', sample.Steps.Take(done))} }} do q where needed"));
                var strip = both.Procedure("p").Outcome.Strip!;
                Assert.True(sample.Strip.IsSound == strip.IsSound, both.Findings.FirstOrDefault() + sample.Text);
                Assert.Equal(Checked.Lines(sample.Strip.Actions), Checked.Lines(strip.Actions));
                Assert.Equal(done, strip.Skipped.Length);
                Assert.Equal(sample.Checked.Only.IsProven, both.Procedure("p").IsProven);
                Assert.Equal(
                    Checked.Lines(sample.Outcome.Refit?.Actions ?? []),
                    Checked.Lines(both.Procedure("p").Outcome.Refit?.Actions ?? []));
                Interlocked.Add(ref left, done);
                Interlocked.Add(ref whole, done == sample.Steps.Count && done > 0 ? 1 : 0);
            },
            iter: Depth.Of(1600));
        Assert.True(left > Depth.Least(600) && whole > Depth.Least(9), $"only {left} steps were left out, {whole} times all of them");
    }

    [Fact]
    public void A_call_twice_is_one_finding()
    {
        var twice = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var sample = Sample.Of(seed);
                // Of what is stuck nothing is told twice.
                if (sample.Steps.Count == 0 || sample.Checked.Codes.Contains("PRC2002") || ComesBackToWhatWas(sample) || sample.Steps.Any(step => step.Contains(" of ", StringComparison.Ordinal)))
                {
                    return;
                }

                var both = Checked.Text(
                    RandomMachine.Text(sample.Declarations)
                    + Procedure("q", $"stage \"S\" {{ {string.Join('\n', sample.Steps)} }}")
                    + Procedure("p", "do q do q"));
                Assert.True(both.Codes.Count(code => code == "PRC3006") == 1, sample.Text);
                Interlocked.Increment(ref twice);
            },
            iter: Depth.Of(1600));
        Assert.True(twice > Depth.Least(9), $"only {twice} calls came twice");
    }

    [Fact]
    public void The_order_of_declarations_changes_nothing_about_the_way_that_a_strip_takes()
    {
        var choices = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                var declarations = RandomMachine.Declarations(seed.Parts, seed.Machine);
                var random = new Random((int)seed.Machine);
                var machine = Sample.Bind(declarations);
                var part = machine.Parts[(int)(seed.Strip % machine.Parts.Length)].Name;
                var sample = Sample.Make(declarations, [$"strip {part}"]);
                var shuffled = Sample.Make([.. declarations.OrderBy(_ => random.Next())], [$"strip {part}"]);
                Assert.Equal(sample.Strip.IsSound, shuffled.Strip.IsSound);
                Assert.Equal(Checked.Lines(sample.Strip.Actions).Order(), Checked.Lines(shuffled.Strip.Actions).Order());
                Interlocked.Add(ref choices, sample.Strip.Actions.Count(action => action.Needs.Any(met => met.Need.Declared?.State == NeededState.AnyOf)));
            },
            iter: Depth.Of(800));
        Assert.True(choices > Depth.Least(40), $"only {choices} actions had a choice");
    }

    /// <summary>Whether a control moves more than once, or what is temporary goes on and off again.</summary>
    private static bool ComesBackToWhatWas(Sample sample) =>
        sample.Strip.Actions
            .Where(action => action.Target is Control or { IsTemporary: true })
            .GroupBy(action => action.Target)
            .Any(moves => moves.Skip(1).Any());

    private static string Procedure(string name, string body) => $"procedure {name} \"{name}\" on m {{\n{body}\n}}\n";
}
