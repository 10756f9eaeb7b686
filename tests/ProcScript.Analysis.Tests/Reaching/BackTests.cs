using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching;
using ProcScript.Analysis.Stripping;
using ProcScript.Analysis.Tests.Demo;
using ProcScript.Analysis.Tests.Properties;
using CsCheck;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>The way back from the middle of a job.</summary>
public sealed class BackTests
{
    [Fact]
    public void From_every_step_of_random_jobs_there_is_a_way_back_that_is_never_longer_than_the_exact_reverse()
    {
        var (ways, shorter) = (0, 0);
        Sample.Seeds(6).Sample(
            seed =>
            {
                var sample = Sample.Of(seed, steps: 12);
                if (!sample.Checked.Only.IsProven)
                {
                    return;
                }

                for (var after = 1; after <= sample.Strip.Actions.Length; after++)
                {
                    var half = new HalfStripped(new MachineFacts(sample.Machine), sample.Strip, after);
                    if (half.Derive() is not { } derived)
                    {
                        // Where what was done goes back only with what came later: a temporary part that is still on, a prop without its part.
                        continue;
                    }

                    var best = half.Shortest(derived);
                    Assert.True(best.Cost <= derived.Cost);
                    Assert.True(HalfStripped.Bound(best) <= best.Cost + 1e-6, sample.Text);
                    Assert.Empty(Proving.RefitProof.Failures(new MachineFacts(sample.Machine), best.Strip, best.Refit.Actions));
                    Interlocked.Increment(ref ways);
                    Interlocked.Add(ref shorter, best.Cost < derived.Cost ? 1 : 0);
                }
            },
            iter: Depth.IsWhole ? 400 : 40);
        Assert.True(ways > 50, $"only {ways} ways back were found");
        TestContext.Current.SendDiagnosticMessage($"{ways} ways back, {shorter} shorter");
    }
}
