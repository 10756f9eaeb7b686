using System.Globalization;
using System.Xml.Linq;

namespace ProcScript.Cli.Tests.Reports;

/// <summary>What the build servers read of a test report; <c>tests/outputs</c> has it read by a reader that is not ours.</summary>
public sealed class JUnitReportTests : IDisposable
{
    private readonly ReportedLibrary _library = new();

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task The_numbers_are_those_of_the_cases()
    {
        var report = await ReportAsync();
        var suites = report.Elements("testsuite").ToList();

        Assert.True(suites.Count >= 4);
        Assert.All(suites, suite =>
        {
            Assert.Equal(Number(suite, "tests"), suite.Elements("testcase").Count());
            Assert.Equal(Number(suite, "failures"), suite.Elements("testcase").Elements("failure").Count());
            Assert.Equal(Number(suite, "skipped"), suite.Elements("testcase").Elements("skipped").Count());
        });
        Assert.Equal(Number(report, "tests"), suites.Sum(suite => Number(suite, "tests")));
        Assert.Equal(Number(report, "failures"), suites.Sum(suite => Number(suite, "failures")));
    }

    [Theory]
    [InlineData("error")]
    [InlineData("warning")]
    [InlineData("never")]
    public async Task A_finding_is_a_failure_where_it_fails_the_run(string failOn)
    {
        var run = await _library.CheckAsync("--format", "junit", "--fail-on", failOn);
        var failures = XElement.Parse(run.Output).Descendants("failure").ToList();

        Assert.Equal(run.Code == ExitCode.Findings, failures.Count > 0);
        Assert.Equal(failOn == "warning", failures.Any(failure => (string?)failure.Attribute("type") == "warning"));
    }

    [Fact]
    public async Task Procedures_pass_when_they_are_proven_and_are_skipped_when_nobody_knows()
    {
        var report = await ReportAsync();

        Assert.Empty(Case(report, "p: strip and refit").Elements());
        Assert.Equal("not proven", (string?)Case(report, "q: strip and refit").Element("skipped")!.Attribute("message"));
        Assert.StartsWith("not checked", (string?)Case(report, "r: strip and refit").Element("skipped")!.Attribute("message"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_two_cases_of_a_suite_share_a_name_and_none_has_a_line_in_it()
    {
        using TemporaryFolder disk = new();
        disk.With("a.proc", "}\n}\n}\n");
        var suite = XElement.Parse((await CliRun.AtAsync(disk.Path, "check", ".", "--format", "junit")).Output).Element("testsuite")!;
        var names = suite.Elements("testcase").Select(one => (string)one.Attribute("name")!).ToList();

        Assert.Equal(3, names.Count);
        Assert.Equal(3, names.Distinct().Count());
        Assert.EndsWith(" (3)", names[2], StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_time_is_told_on_request_alone()
    {
        Assert.Null((await ReportAsync()).Attribute("time"));
        Assert.Equal("0.000", (string?)(await ReportAsync("--time")).Attribute("time"));
    }

    private static XElement Case(XElement report, string name) =>
        report.Descendants("testcase").First(one => (string?)one.Attribute("name") == name);

    private static int Number(XElement element, string attribute) => int.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);

    private async Task<XElement> ReportAsync(params string[] options) => XElement.Parse((await _library.CheckAsync(["--format", "junit", .. options])).Output);
}
