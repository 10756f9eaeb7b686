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

    /// <summary>A rule that weighs less than an error.</summary>
    private const string Lesser = "PRC7003";

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
    public async Task A_baseline_of_it_only_shrinks_and_takes_in_no_error()
    {
        var errors = (await ErrorsAsync()).ToHashSet();
        var others = Procedures - errors.Count;
        Assert.True(errors.Count > 10 && others > 10, $"{errors.Count} errors, {others} others");
        Assert.Equal((1, Written($"{others} findings", errors.Count)), await RunAsync("baseline", "write", ".", "-o", Baseline));
        await AssertNothingNewAsync(errors);

        // One is mended: its entry is found, until the baseline is written again.
        var (mended, _) = _library.Seeds.First(seed => seed.Seed.Rule == Lesser);
        _disk.With(mended.File, _library.CleanText(mended.File));
        var (code, stale) = await CheckAsync("--baseline", Baseline, "--fail-on", "warning");
        var told = Assert.Single(stale.Except(errors));
        Assert.Equal((1, "PRC7031", Baseline), (code, told.Rule, told.File));
        Assert.Equal((1, Written($"{others - 1} findings, 1 dropped, 0 added", errors.Count)), await RunAsync("baseline", "write", ".", "-o", Baseline));
        await AssertNothingNewAsync(errors);

        // One is made anew: beside the errors it alone is told, and no baseline takes it in unasked.
        var another = FaultKinds.InSteps.First(kind => kind.Code == Lesser).Make(_library.CleanText(mended.File), mended.File[^6] - '0');
        _disk.With(mended.File, another.Text);
        (code, var added) = await CheckAsync("--baseline", Baseline);
        Assert.Equal((1, new Seed(Lesser, mended.File, another.Line)), (code, Assert.Single(added.Except(errors))));
        var shrunk = _disk.Read(Baseline);
        Assert.Equal(1, (await RunAsync("baseline", "write", ".", "-o", Baseline)).Code);
        Assert.Equal(shrunk, _disk.Read(Baseline));
    }

    [Fact]
    public async Task A_comment_with_nothing_to_allow_is_told_where_all_is_judged_and_left_alone_beside_an_error()
    {
        using TemporaryFolder disk = new();
        foreach (var path in _library.Files.Keys)
        {
            disk.With(path, _library.CleanText(path));
        }

        var idle = _library.Files.Keys.First(path => path.EndsWith("procedure-1.proc", StringComparison.Ordinal));
        disk.With(idle, disk.Read(idle).Replace("    undo module_bolts_1", "    // proc: allow PRC3006 because \"They turn with it.\"\n    undo module_bolts_1", StringComparison.Ordinal));
        var whole = await CliRun.AtAsync(disk.Path, "check", ".");
        Assert.Contains("PRC7002", whole.Output, StringComparison.Ordinal);

        var (wrong, _) = _library.Seeds.First(seed => seed.Seed.Rule == "PRC3001");
        disk.With(wrong.File, _library.Files[wrong.File]);
        var broken = await CliRun.AtAsync(disk.Path, "check", ".");
        Assert.Contains("PRC3001", broken.Output, StringComparison.Ordinal);
        if (wrong.File.Split('/')[0] == idle.Split('/')[0])
        {
            Assert.DoesNotContain("PRC7002", broken.Output, StringComparison.Ordinal);
        }

        disk.With(idle, disk.Read(idle).Replace("goal ", "goal goal ", StringComparison.Ordinal));
        Assert.DoesNotContain("PRC7002", (await CliRun.AtAsync(disk.Path, "check", ".")).Output, StringComparison.Ordinal);
    }

    private static string Written(string findings, int errors) => string.Create(
        CultureInfo.InvariantCulture,
        $"wrote {Baseline}: {findings}\n{errors} errors left out: an error is never in a baseline, it has to be fixed\n");

    /// <summary>Beside the errors, which no baseline silences.</summary>
    private async Task AssertNothingNewAsync(HashSet<Seed> errors)
    {
        var (code, found) = await CheckAsync("--baseline", Baseline, "--fail-on", "hint");
        Assert.Equal(errors, found.ToHashSet());
        Assert.Equal(1, code);
    }

    private async Task<IEnumerable<Seed>> ErrorsAsync()
    {
        var (_, output) = await RunAsync("check", ".", "--format", "json");
        return JsonNode.Parse(output)!["findings"]!.AsArray().Where(finding => (string)finding!["severity"]! == "error").Select(finding => SeedOf(finding!));
    }

    private static Seed SeedOf(JsonNode finding) => new((string)finding["rule"]!, (string)finding["place"]!["file"]!, (int)finding["place"]!["line"]!);

    private List<Seed> Seeds() => [.. _library.Seeds.Select(seed => seed.Seed)];

    private async Task<(int Code, List<Seed> Found)> CheckAsync(params string[] options)
    {
        var (code, output) = await RunAsync(["check", ".", "--format", "json", .. options]);
        return (
            code,
            [
                .. JsonNode.Parse(output)!["findings"]!.AsArray().Select(finding => SeedOf(finding!)),
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
