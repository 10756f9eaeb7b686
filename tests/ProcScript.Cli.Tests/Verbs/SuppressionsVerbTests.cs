namespace ProcScript.Cli.Tests.Verbs;

public sealed class SuppressionsVerbTests : IDisposable
{
    private const string Text =
        """
        // proc: allow PRC5002 until 2026-06-01 because "It is hand tight."
        fastener a "A" { thread M8x1.25  torque 22 ± 2 N.m }
        // proc: allow no-tool
        fastener b "B" { thread M8x1.25  torque 22 ± 2 N.m }
        // proc: allow PRC3001 because "There is nothing."
        // proc: allow PRC5101 because "Two at once."
        // proc: allow PRC9999 because "There is no such rule."
        fastener c "C" { thread M8x1.25  drive key  torque 22 ± 2 N.m }
        tool key "key"

        """;

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task All_are_listed_with_place_rule_state_day_and_reason()
    {
        _disk.With("a.proc", Text);

        Assert.Equal(
            new CliRun(
                ExitCode.Clean,
                """
                a.proc:1:1: PRC5002 no-tool, unused, until 2026-06-01: It is hand tight.
                a.proc:3:1: PRC5002 no-tool, unused: no reason given
                a.proc:5:1: PRC3001 removed-while-held, unused: There is nothing.
                a.proc:6:1: PRC5101 two-instructions, rule off: Two at once.
                a.proc:7:1: PRC9999, unknown rule: There is no such rule.
                5 comments in 1 file: 3 unused, 1 unknown rule, 1 rule off

                """.ReplaceLineEndings("\n"),
                ""),
            await CliRun.AtAsync(_disk.Path, "suppressions", "--wording", "neutral"));
    }

    [Fact]
    public async Task The_day_may_be_handed_in()
    {
        var twice = File.ReadAllText(Path.Combine(Checkout.Cases, "rules", "PRC7004", "quiet", "guard.proc"));
        _disk.With("a.proc", twice.Replace("again.\" until 2999-12-31", "again.\" until 2026-06-01", StringComparison.Ordinal));

        Assert.EndsWith(": 2 used\n", (await CliRun.AtAsync(_disk.Path, "suppressions", "--today", "2026-06-01")).Output, StringComparison.Ordinal);
        Assert.EndsWith(": 1 used, 1 expired\n", (await CliRun.AtAsync(_disk.Path, "suppressions", "--today", "2026-06-02")).Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(_disk.Path, "check", ".", "--today", "2026-06-01", "--fail-on", "hint")).Code);
        Assert.Equal(ExitCode.Findings, (await CliRun.AtAsync(_disk.Path, "check", ".", "--today", "2026-06-02")).Code);
    }

    [Fact]
    public async Task Without_any_there_is_one_line()
    {
        _disk.With("a.proc", "tool a \"A\"\n");

        Assert.Equal("0 comments in 1 file\n", (await CliRun.AtAsync(_disk.Path, "suppressions", ".")).Output);
    }
}
