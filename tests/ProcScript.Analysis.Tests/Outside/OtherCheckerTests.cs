using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Tests.Demo;
using ProcScript.Analysis.Tests.Properties;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Outside;

/// <summary>
/// The proof is judged by a program that shares nothing with it: the same packs are good to both, and the same changes to a pack spoil it for
/// both.
/// </summary>
[Slow]
public sealed class OtherCheckerTests
{
    private static readonly int Samples = Depth.Of(200);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Both_accept_every_pack_of_the_demo_library_and_agree_on_packs_with_spoiled_refits()
    {
        List<(PlanCase Case, Func<OtherVerdict, bool> Agrees)> cases = [];
        var refused = 0;
        var random = new Random(11);
        foreach (var report in DemoLibrary.Report.Procedures)
        {
            var plan = report.CreatePlan()!;
            var about = $"{report.Procedure.Job}+{string.Join('+', report.Options)}";
            cases.Add((PlanCase.Of(report, plan, about), verdict => verdict.IsGood));
            for (var i = 0; i < Depth.Of(3, few: 1); i++)
            {
                var (spoiled, isProven) = BrokenPlans.SpoilRefit(report, plan, random);
                cases.Add((PlanCase.Of(report, spoiled, $"{about}, refit {Lines(spoiled)}"), verdict => verdict.Strip is null && verdict.Refit is null == isProven));
                refused += isProven ? 0 : 1;
            }
        }

        await AgreeAsync(cases);
        Assert.True(refused > Depth.Of(100, few: 30), $"only {refused} of {cases.Count} refused");
    }

    [Fact]
    public async Task Both_accept_random_packs_and_agree_on_thousands_that_are_spoiled()
    {
        List<(PlanCase Case, Func<OtherVerdict, bool> Agrees)> cases = [];
        var (packs, spoiled, refused) = (0, 0, 0);
        for (var seed = 0u; seed < Samples; seed++)
        {
            var sample = Sample.Of((1 + (int)(seed % 9), seed * 7919, seed * 104729), asymmetric: seed % 2 == 0);
            var report = sample.Checked.Only;
            if (!report.IsProven || sample.Strip.Actions.IsEmpty)
            {
                continue;
            }

            packs++;
            var random = new Random((int)seed);
            var plan = report.CreatePlan()!;
            cases.Add((PlanCase.Of(report, plan, sample.Text), verdict => verdict.IsGood));
            for (var i = 0; i < 3 && !report.Outcome.Refit!.Actions.IsEmpty; i++)
            {
                var (changed, isProven) = BrokenPlans.SpoilRefit(report, plan, random);
                cases.Add((PlanCase.Of(report, changed, $"{sample.Text}\nrefit {Lines(changed)}"), verdict => verdict.Strip is null && verdict.Refit is null == isProven));
                Count(isProven);
            }

            foreach (var rest in Rests(sample, random))
            {
                var other = sample.With(rest: rest).Checked.Only;
                if (other.IsProven)
                {
                    packs++;
                    cases.Add((PlanCase.Of(other, other.CreatePlan()!, $"{sample.Text}\n{rest}"), verdict => verdict.IsGood));
                    var (changed, isProven) = BrokenPlans.SpoilRefit(other, other.CreatePlan()!, random);
                    cases.Add((PlanCase.Of(other, changed, $"{sample.Text}\n{rest}\nrefit {Lines(changed)}"), verdict => verdict.Refit is null == isProven));
                    Count(isProven);
                }
            }

            var order = BrokenPlans.Spoil([.. Enumerable.Range(0, sample.Steps.Count)], random);
            var isSound = sample.With(steps: [.. order.Select(index => sample.Steps[index])]).Outcome.IsStripSound;
            var steps = plan.Strip.SelectMany(stage => stage.Steps).ToList();
            // A cap stays behind what it closes.
            var written = sample.Strip.Actions.Where(action => action.Origin is WrittenStep).Select(action => action.Number).Append(steps.Count).ToList();
            cases.Add((
                PlanCase.Of(report, BrokenPlans.WithStrip(plan, [.. order.SelectMany(index => steps[written[index]..written[index + 1]])]), $"{sample.Text}\nstrip {string.Join(' ', order)}"),
                verdict => verdict.Strip is null == isSound));
            Count(isSound);
        }

        await AgreeAsync(cases);
        Assert.True(packs > 2 * Samples && spoiled > 4 * Samples && refused > 2 * Samples, $"{packs} packs, {spoiled} spoiled, {refused} of them refused");

        void Count(bool isGood)
        {
            spoiled++;
            refused += isGood ? 0 : 1;
        }
    }

    [Fact]
    public async Task A_pack_and_a_model_that_do_not_agree_are_told_apart()
    {
        var report = DemoLibrary.Report.Procedures.First(report => report.CreatePlan()!.Items.Any(item => item.On.Length > 0));
        var plan = report.CreatePlan()!;
        var other = plan with { Items = [.. plan.Items.Select(item => item with { On = "" })] };

        var verdict = Assert.Single(await OtherChecker.JudgeAsync([PlanCase.Of(report, other, "")], Stop));

        Assert.StartsWith("plan and model do not agree on ", verdict.Form, StringComparison.Ordinal);
    }

    private static async Task AgreeAsync(List<(PlanCase Case, Func<OtherVerdict, bool> Agrees)> cases)
    {
        var verdicts = await OtherChecker.JudgeAsync([.. cases.Select(one => one.Case)], Stop);
        Assert.Equal(cases.Count, verdicts.Count);
        var apart = cases.Zip(verdicts).Where(pair => !pair.First.Agrees(pair.Second)).ToList();
        Assert.True(
            apart.Count == 0,
            $"{apart.Count} of {cases.Count} verdicts differ, such as:\n{string.Join("\n\n", apart.Take(3).Select(pair => $"{pair.Second}\n{pair.First.Case.About}"))}");
    }

    /// <summary>What may stand after the stages of a sample: something thrown away, something replaced, a test under power.</summary>
    private static IEnumerable<string> Rests(Sample sample, Random random)
    {
        var off = sample.Strip.Actions
            .Where(action => action.Verb == Verb.Remove || (action.Target is Joint joint && sample.Strip.End.Attached(joint) == 0))
            .Select(action => action.Target!)
            .Distinct()
            .ToImmutableArray();
        if (off.Length > 0)
        {
            yield return $"work {{ discard {off[random.Next(off.Length)].Name} because \"It wears.\" }}";
            yield return $"work {{ replace {off[random.Next(off.Length)].Name} }}";
        }

        var refit = sample.Refit.Actions;
        if (refit.FirstOrDefault(action => action.Verb == Verb.Fasten) is { } fastened)
        {
            yield return $"refit {{ snug {fastened.Target!.Name} }}";
            yield return $"refit {{ retorque {fastened.Target!.Name} }}";
        }

        var back = refit.ToList().FindIndex(action => action.Verb == Verb.Restore);
        if (back > 0 && refit.Take(back).LastOrDefault(action => action.Target is Joint or Part && action.Verb != Verb.Uncap) is { } before)
        {
            yield return $"refit {{ test \"T\" before {before.Verb.ToString().ToLowerInvariant()} {before.Target!.Name} {{ power {refit[back].Target!.Name}  check \"C\" }} }}";
        }
    }

    private static string Lines(Plan plan) =>
        string.Join(", ", plan.Refit.SelectMany(stage => stage.Steps).Select(step => $"{step.Number} {step.Verb} {step.Count} {step.Item} {step.Position}"));
}
