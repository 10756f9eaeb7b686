using ProcScript.Analysis.Tests.Demo;

namespace ProcScript.Analysis.Tests.Reference;

/// <summary>The language reference and the guide show nothing that the compiler has not seen.</summary>
public sealed class ReferenceTests
{
    public static TheoryData<string, string, int> Examples
    {
        get
        {
            var data = new TheoryData<string, string, int>();
            foreach (var example in ReferenceExample.All)
            {
                data.Add(example.Page, example.Section, example.Line);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_gets_the_findings_that_it_announces(string page, string section, int line)
    {
        var example = ReferenceExample.All.Single(one => one.Page == page && one.Section == section && one.Line == line);

        var findings = example.Check().Findings;

        if (example.Expected.Length == 0)
        {
            Assert.Empty(findings.Select(DemoLibrary.Words));
        }
        else
        {
            Assert.NotEmpty(findings);
            Assert.All(findings, reported => Assert.True(reported.Finding.Rule.Code == example.Expected, DemoLibrary.Words(reported)));
        }
    }

    [Fact]
    public void The_first_example_is_short_and_whole()
    {
        var first = ReferenceExample.All[0].Files["section.proc"];

        Assert.InRange(first.TrimEnd().Split('\n').Length, 25, 45);
        Assert.All(["machine ", "procedure ", "goal ", "refit "], word => Assert.Contains(word, first, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_job_in_an_example_is_proven()
    {
        var jobs = ReferenceExample.All.Where(example => example.Expected.Length == 0).SelectMany(example => example.Check().Procedures).ToList();

        Assert.True(jobs.Count > 8, $"{jobs.Count} jobs");
        Assert.All(jobs, job => Assert.True(job.IsProven, job.Procedure.Name));
    }
}
