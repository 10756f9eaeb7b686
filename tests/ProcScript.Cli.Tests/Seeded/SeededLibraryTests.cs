using System.Diagnostics;
using System.Globalization;
using System.Text.Json.Nodes;
using ProcScript.Cli.Tests.Processes;

namespace ProcScript.Cli.Tests.Seeded;

/// <summary>
/// A library with as many mistakes as procedures: every one is found where it was made, and nothing else; then the baseline.
/// <c>SEEDED_PROCEDURES=1000</c> takes a library of that size, <c>PROCSCRIPT</c> names another program, which runs as a process.
/// </summary>
public sealed class SeededLibraryTests : IDisposable
{
    private const string Baseline = "baseline.json";

    private static readonly int Procedures =
        int.TryParse(Environment.GetEnvironmentVariable("SEEDED_PROCEDURES"), CultureInfo.InvariantCulture, out var procedures) ? procedures : 60;

    private readonly SeededLibrary _library = SeededLibrary.Of(Procedures);
    private readonly TemporaryFolder _disk = new();

    public SeededLibraryTests()
    {
        _disk.With("procscript.json", """{ "severities": { "PRC6xxx": "off" } }""");
        foreach (var (path, text) in _library.Files)
        {
            _disk.With(path, text);
        }
    }

    public void Dispose() => _disk.Dispose();

    [Fact]
    public void The_mistakes_are_of_many_kinds()
    {
        Assert.Equal(Procedures, _library.Seeds.Count);
        Assert.True(_library.Seeds.Select(seed => seed.Kind).Distinct().Count() >= FaultKinds.InText.Count + FaultKinds.InSteps.Count, "A kind is never made.");
        Assert.Superset(new HashSet<char>("123457"), _library.Seeds.Select(seed => seed.Seed.Rule["PRC".Length]).ToHashSet());
    }

    [Fact]
    public async Task Every_mistake_is_found_where_it_was_made_and_nothing_else()
    {
        var (code, found) = await CheckAsync();

        Assert.Equal(1, code);
        Assert.Empty(Seeds().Except(found).Select(seed => $"missed: {seed}"));
        Assert.Empty(found.Except(Seeds()).Select(seed => $"extra: {seed}"));
        Assert.Equal(Procedures, found.Count);
    }

    [Fact]
    public async Task A_baseline_of_it_only_shrinks()
    {
        var written = await RunAsync("baseline", "write", ".", "-o", Baseline);
        Assert.Equal((0, string.Create(CultureInfo.InvariantCulture, $"wrote {Baseline}: {Procedures} findings\n")), written);
        await AssertNothingNewAsync();

        // One is mended: its entry is found, until the baseline is written again.
        var (mended, _) = _library.Seeds.First(seed => seed.Seed.Rule == "PRC3001");
        _disk.With(mended.File, _library.CleanText(mended.File));
        var (code, stale) = await CheckAsync("--baseline", Baseline, "--fail-on", "warning");
        Assert.Equal((1, "PRC7031", Baseline), (code, Assert.Single(stale).Rule, stale[0].File));
        Assert.Equal(
            (0, string.Create(CultureInfo.InvariantCulture, $"wrote {Baseline}: {Procedures - 1} findings, 1 dropped, 0 added\n")),
            await RunAsync("baseline", "write", ".", "-o", Baseline));
        await AssertNothingNewAsync();

        // One is made anew: it alone is told, and no baseline takes it in unasked.
        var another = FaultKinds.InSteps.First(kind => kind.Code == "PRC3006").Make(_library.CleanText(mended.File), mended.File[^6] - '0');
        _disk.With(mended.File, another.Text);
        (code, var added) = await CheckAsync("--baseline", Baseline);
        Assert.Equal((1, new Seed("PRC3006", mended.File, another.Line)), (code, Assert.Single(added)));
        var shrunk = _disk.Read(Baseline);
        Assert.Equal(1, (await RunAsync("baseline", "write", ".", "-o", Baseline)).Code);
        Assert.Equal(shrunk, _disk.Read(Baseline));
    }

    private async Task AssertNothingNewAsync()
    {
        var (code, found) = await CheckAsync("--baseline", Baseline, "--fail-on", "hint");
        Assert.Empty(found);
        Assert.Equal(0, code);
    }

    private List<Seed> Seeds() => [.. _library.Seeds.Select(seed => seed.Seed)];

    private async Task<(int Code, List<Seed> Found)> CheckAsync(params string[] options)
    {
        var (code, output) = await RunAsync(["check", ".", "--format", "json", .. options]);
        return (
            code,
            [
                .. JsonNode.Parse(output)!["findings"]!.AsArray()
                    .Select(finding => new Seed((string)finding!["rule"]!, (string)finding["place"]!["file"]!, (int)finding["place"]!["line"]!)),
            ]);
    }

    private async Task<(int Code, string Output)> RunAsync(params string[] arguments)
    {
        if (!TestedProgram.IsAnother)
        {
            var run = await CliRun.AtAsync(_disk.Path, arguments);
            return ((int)run.Code, run.Output);
        }

        var start = TestedProgram.Start(arguments);
        start.WorkingDirectory = _disk.Path;
        start.RedirectStandardOutput = true;
        start.StandardOutputEncoding = System.Text.Encoding.UTF8;
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, output);
    }
}
