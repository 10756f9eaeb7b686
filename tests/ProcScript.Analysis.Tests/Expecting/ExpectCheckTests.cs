using ProcScript.Analysis.Expecting;
using ProcScript.Analysis.Tests.Demo;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Expecting;

public sealed class ExpectCheckTests
{
    private const string Bunker =
        """
        tool key "5 mm hex key"
        clip pin "push pin" { tool key }
        machine bunker "bunker" {
          option vent "vent"
          part lid "lid" { held by 4 pin as lid_pins }
          part chute "chute" { behind lid  held by 2 pin as chute_pins }
          when vent { part cowl "cowl" { held by 1 pin as cowl_pin } }
        }
        procedure chute_off "Take the chute off" on bunker {
          goal remove chute
          when vent { stage "Cowl" { release cowl_pin  remove cowl } }
          stage "Lid" { release lid_pins  remove lid }
          stage "Chute" { release chute_pins  remove chute }
        }
        """;

    private const string Forgotten = """

        procedure wrong "Forgets the lid" on bunker {
          goal remove chute
          stage "Chute" { release chute_pins  remove chute }
        }
        """;

    [Theory]
    [InlineData("pack chute_off\nstrip release lid_pins, remove chute")]
    [InlineData("pack chute_off\nrefit fit chute, engage chute_pins, fit lid")]
    [InlineData("pack chute_off with vent\nstrip remove cowl, remove lid\nsteps 12")]
    [InlineData("pack chute_off without vent\nsteps 8\npeople 1\nbags 2\ntime 0 .. 1 h")]
    [InlineData("pack wrong\nnot proven")]
    [InlineData("file x.proc\nPRC3002\nPRC3002 at 17")]
    public void What_is_as_expected_is_met(string text) => Assert.Empty(Judge(text, Bunker + Forgotten));

    [Theory]
    [InlineData("pack chute_off\nstrip remove chute, release lid_pins", 1, "chute_off has 'release lid_pins' before 'remove chute' in its strip, not after it", "strip release lid_pins, remove chute")]
    [InlineData("pack chute_off\nstrip release lid_pins, remove door", 1, "chute_off has no 'remove door' in its strip", "strip release lid_pins")]
    [InlineData("pack chute_off\nstrip remove lid, remove lid", 1, "chute_off has 'remove lid' less often in its strip", "strip remove lid")]
    [InlineData("pack chute_off\nsteps 8", 1, "chute_off with vent has 12 steps, not 8", null)]
    [InlineData("pack chute_off without vent\nsteps 9", 1, "chute_off has 8 steps, not 9", "steps 8")]
    [InlineData("pack chute_off\nnot proven", 1, "chute_off is proven now", null)]
    [InlineData("pack chute_off with door\nsteps 1", 0, "chute_off has no pack in such a variant; see what options the machine has", null)]
    [InlineData("pack door_off\nsteps 1", 0, "there is no job 'door_off'; there are: chute_off, wrong", null)]
    [InlineData("pack wrong\nsteps 8", 0, "wrong is not proven; see what 'procscript check' says of it", null)]
    [InlineData("file x.proc\nPRC3002 at 4", 1, "PRC3002 is at 17, not at 4", "PRC3002 at 17")]
    [InlineData("file x.proc\nPRC3001 at 17", 1, "there is no PRC3001 at 17", null)]
    [InlineData("file y.proc\nnothing", 0, "there is no file 'y.proc' among those that are checked", null)]
    public void What_is_otherwise_is_told_with_the_line_that_would_be_met(string text, int line, string message, string? asIs)
    {
        var failure = Assert.Single(Judge(text, Bunker + Forgotten));

        Assert.Equal((line, message), (failure.Line, failure.Message));
        Assert.Equal(asIs, failure.AsIs is null ? null : Assert.Single(failure.AsIs));
    }

    [Fact]
    public void What_is_put_right_keeps_comments_indentation_and_line_ends()
    {
        const string Text = "// Ours.\r\npack chute_off without vent\r\n\tsteps 9   // few\r\n  people 1\r\nfile x.proc\r\n";
        var file = ExpectFile.Parse("a.expect", Text);

        var updated = ExpectUpdate.Apply(file, new ExpectCheck(Check(Bunker)).Judge(file));

        Assert.Equal("// Ours.\r\npack chute_off without vent\r\n\tsteps 8   // few\r\n  people 1\r\nfile x.proc\r\n  PRC5081 at 11\r\n", updated);
    }

    [Fact]
    public void What_is_filled_in_of_every_job_of_the_demo_library_is_met_and_stays()
    {
        var report = DemoLibrary.Report;
        var jobs = report.Procedures.Select(one => one.Procedure.Job).Distinct(StringComparer.Ordinal).ToList();
        var text = string.Concat(jobs.Select(job => $"pack {job}\n").Concat(report.Library.Trees.Keys.Select(path => $"file {path}\n")));
        var check = new ExpectCheck(report);

        var filled = Update(ExpectFile.Parse("all.expect", text));

        Assert.Empty(filled.Problems);
        Assert.True(filled.Expectations.Length > 8 * jobs.Count, $"{filled.Expectations.Length} expectations of {jobs.Count} jobs");
        Assert.Equal(["strip", "work", "refit"], filled.Expectations.OfType<OrderExpectation>().Select(one => one.Phase).Distinct());
        Assert.Empty(check.Judge(filled));
        Assert.Equal(filled.Text, Update(filled).Text);

        ExpectFile Update(ExpectFile file) => ExpectFile.Parse(file.Path, ExpectUpdate.Apply(file, check.Judge(file)));
    }

    private static LibraryReport Check(string text) =>
        LibraryCheck.Run(MemorySourceStore.Of("x.proc", text), new CheckSettings(), TestContext.Current.CancellationToken);

    private static IReadOnlyList<ExpectFailure> Judge(string expected, string text)
    {
        var file = ExpectFile.Parse("a.expect", expected);
        Assert.Empty(file.Problems);
        return new ExpectCheck(Check(text)).Judge(file);
    }
}
