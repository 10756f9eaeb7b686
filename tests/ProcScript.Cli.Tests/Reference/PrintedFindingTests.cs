using ProcScript.Analysis.Tests.Reference;

namespace ProcScript.Cli.Tests.Reference;

public sealed class PrintedFindingTests
{
    private const string Lead = "as `procscript check` prints it:\n\n";

    [Fact]
    public async Task The_finding_that_the_reference_shows_is_printed_like_that()
    {
        var relay = Assert.Single(ReferenceExample.All, example => example is { Page: "LANGUAGE.md", Expected: "PRC3001" });
        using TemporaryFolder folder = new();
        foreach (var (path, content) in relay.Files)
        {
            folder.With(path, content);
        }

        var run = (await CliRun.AtAsync(folder.Path, "check", ".", "--root", ".")).AssertNoBug();

        Assert.StartsWith(Shown(), run.Output, StringComparison.Ordinal);
    }

    /// <summary>The indented lines after the lead, without their indent.</summary>
    private static string Shown()
    {
        var text = ReferenceExample.Language.ReplaceLineEndings("\n");
        var start = text.IndexOf(Lead, StringComparison.Ordinal);
        Assert.True(start > 0, "The reference shows no finding.");
        var lines = text[(start + Lead.Length)..].Split('\n').TakeWhile(line => line.StartsWith("    ", StringComparison.Ordinal));
        return string.Concat(lines.Select(line => line[4..] + "\n"));
    }
}
