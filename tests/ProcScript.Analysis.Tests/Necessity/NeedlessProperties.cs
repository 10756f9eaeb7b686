using CsCheck;
using ProcScript.Analysis.Tests.Properties;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Necessity;

/// <summary>
/// Random strips of random machines with a goal, against brute force: each text is checked anew without the lines in question, so
/// that nothing of how they were found has a say.
/// </summary>
public sealed class NeedlessProperties
{
    [Fact]
    public void What_is_hinted_can_go_group_by_group_and_all_together_and_nothing_else_can()
    {
        var (hinted, kept, groups) = (0, 0, 0);
        Sample.Seeds(7).Sample(
            seed =>
            {
                var job = Job.Of(seed);
                if (job is null)
                {
                    return;
                }

                var findings = Needless.In(job.Checked.Report);
                foreach (var finding in findings)
                {
                    Assert.True(job.IsRight(job.Text(Needless.Mended(job.Whole, [finding]))), job.Whole);
                }

                var left = job.Text(Needless.Mended(job.Whole, findings));
                Assert.True(job.IsRight(left), job.Whole);
                Assert.Empty(Needless.In(left.Report));
                var steps = job.Steps.Except(findings.SelectMany(finding => Needless.Steps(job.Checked, finding))).ToList();
                foreach (var step in steps.Where(step => !job.IsGoal(step) && !job.IsTemporary(step) && !IsLeftAlone(step, steps)))
                {
                    Assert.False(job.IsRight(job.With([.. steps.Where(other => other != step)])), $"{step} can go\n{job.Whole}");
                    Interlocked.Increment(ref kept);
                }

                Interlocked.Add(ref hinted, job.Steps.Count - steps.Count);
                Interlocked.Add(ref groups, findings.Count);
            },
            iter: Depth.Of(600));
        Assert.True(hinted > Depth.Least(300) && kept > Depth.Least(150) && groups > Depth.Least(100), $"{hinted} steps hinted in {groups} groups, {kept} kept");
    }

    /// <summary>A precaution is never told; nor is what is loosened before it is undone.</summary>
    private static bool IsLeftAlone(string step, IReadOnlyList<string> steps) => step.Split(' ') switch
    {
        ["isolate" or "empty" or "support", ..] => true,
        ["loosen", .., var joint] => steps.Any(other => other.StartsWith("undo ", StringComparison.Ordinal) && other.EndsWith(" " + joint, StringComparison.Ordinal)),
        _ => false,
    };

    /// <summary>A random strip with a goal and work on it.</summary>
    private sealed class Job
    {
        private readonly IReadOnlyList<string> _declarations;
        private readonly string _goal;
        private readonly string _work;
        private readonly string _refit;

        private Job(IReadOnlyList<string> declarations, IReadOnlyList<string> steps, string goal, string work, string refit)
        {
            (_declarations, Steps, _goal, _work, _refit) = (declarations, steps, goal, work, refit);
            Checked = With(steps);
        }

        public IReadOnlyList<string> Steps { get; }

        public Checked Checked { get; }

        public string Whole => Print(Steps);

        /// <summary>A sound job of a seed; null where its steps are not distinct or cannot be proven.</summary>
        public static Job? Of((int Parts, uint Machine, uint Strip) seed)
        {
            var declarations = RandomMachine.Declarations(seed.Parts, seed.Machine, asymmetric: true);
            var walk = RandomStrip.Walk(Sample.Bind(declarations), 25, seed.Strip);
            var steps = walk.Select(RandomStrip.Print).ToList();
            if (steps.Count < 3 || steps.Distinct().Count() < steps.Count)
            {
                return null;
            }

            var random = new Random((int)seed.Strip);
            var aim = walk[random.Next(walk.Count)];
            var replaced = aim is { Verb: Verb.Remove } && random.Next(2) == 0;
            var goal = $"goal {(replaced ? "replace" : Word(aim.Verb))} {aim.Item.Name}";
            var other = walk[random.Next(walk.Count)];
            var work = (replaced ? $"replace {aim.Item.Name}\n" : "") + (other is { Verb: Verb.Remove } ? $"clean {other.Item.Name}\n" : "");
            var named = walk.Where(move => move.Verb is Verb.Remove).Select(move => move.Item.Name).Take(2).ToList();
            var refit = named.Count == 2 && random.Next(4) == 0 ? $"fit {named[1]} before fit {named[0]}\n" : "";
            var job = new Job(declarations, steps, goal, work, refit);
            return job.Checked.Only.IsProven ? job : null;
        }

        public bool IsGoal(string step) => step.Split(' ') is var words && _goal == $"goal {words[0]} {(words.Contains("of") ? words[3] : words[1])}";

        /// <summary>What is temporary is the author's own precaution, and never told.</summary>
        public bool IsTemporary(string step) =>
            step.Split(' ') is var words
            && Checked.Only.Procedure.Machine.Items[words.Contains("of") ? words[3] : words[1]].IsTemporary;

        public Checked With(IReadOnlyList<string> steps) => Text(Print(steps));

        public Checked Text(string text) => Checked.Text(text);

        /// <summary>Whether it is proven, and what is worked on is still out where it was.</summary>
        public bool IsRight(Checked other) => other.Only.IsProven && Cleaned(Checked).SequenceEqual(Cleaned(other));

        private static IEnumerable<(string Name, bool IsOut)> Cleaned(Checked one) => one.Only.Outcome.Strip!.Work
            .Where(action => action.Verb == Verb.Clean)
            .Select(action => (action.Target!.Name, one.Only.Outcome.Strip!.End.Place((Part)action.Target) == States.PartPlace.Out));

        private string Print(IEnumerable<string> steps) =>
            RandomMachine.Text(_declarations) + RandomStrip.Procedure(steps, $"{_goal}\nwork {{\n{_work}}}\nrefit {{\n{_refit}}}");

        private static string Word(Verb verb) => verb.ToString().ToLowerInvariant();
    }
}
