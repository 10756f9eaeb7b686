using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Cli.Caching;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>A library that a command changes files of, or writes files from, with every file as it is before and as it comes out.</summary>
internal sealed partial class WritingJob : IDisposable
{
    private readonly TemporaryFolder _disk = new();
    private readonly Dictionary<string, string> _before;
    private string _firstFolder = "";

    private WritingJob(string[] arguments, Dictionary<string, string> before) => (Arguments, _before) = (arguments, before);

    /// <summary>The command.</summary>
    public string[] Arguments { get; }

    public string Folder => _disk.Path;

    /// <summary>Every file as the command leaves it when nothing stops it.</summary>
    public Dictionary<string, string> After { get; private set; } = [];

    /// <summary>How many files it changes.</summary>
    public int Changes => After.Count(file => _before.GetValueOrDefault(file.Key) != file.Value);

    /// <summary>How long that took.</summary>
    public TimeSpan Usual { get; private set; }

    /// <summary>How long it took from the first file that was begun to the last that got its name.</summary>
    public TimeSpan UsualWriting { get; private set; }

    /// <summary>The job of a verb, done once without being stopped.</summary>
    /// <param name="verb">The verb, or <c>cache</c> for a check that remembers its answer.</param>
    /// <param name="isLarge">Whether there is so much to write that a stop can fall amid it.</param>
    public static async Task<WritingJob> OfAsync(string verb, bool isLarge)
    {
        var files = verb == "cache" || (verb == "baseline" && isLarge) ? AnswerCache.FewestFiles : isLarge ? 40 : 8;
        // A cache takes no more; a baseline is the longer in the writing the more there are.
        var findings = !isLarge ? 2 : verb == "baseline" ? 150 : 40;
        var sources = Enumerable.Range(0, files).ToDictionary(
            i => string.Create(CultureInfo.InvariantCulture, $"f{i % 4}/job{i}.proc"),
            i => WritingSource.Of(verb, i, findings));
        WritingJob job = new(ArgumentsOf(verb), sources);
        job.Reset();
        if (verb is not ("fix" or "format"))
        {
            // There is what an earlier state of the library came to, so that every file is an old one or a new one.
            Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(job.Folder, job.Arguments)).Code);
            foreach (var (path, text) in job.Read())
            {
                job._before[path] = sources.ContainsKey(path) ? WritingSource.Later(verb, text) : text;
            }

            job.Reset();
        }

        await job.MeasureAsync();
        job.After = job.Read();
        Assert.NotEqual(job._before.Values.Order(StringComparer.Ordinal), job.After.Values.Order(StringComparer.Ordinal));
        return job;
    }

    /// <summary>Puts every file back as it was before; what stopped runs have left stays.</summary>
    public void Reset()
    {
        foreach (var (path, text) in _before)
        {
            _disk.With(path, text);
        }

        foreach (var path in After.Keys.Except(_before.Keys))
        {
            File.Delete(_disk[path]);
        }
    }

    /// <summary>Whether a run has begun a file.</summary>
    public bool IsWriting(WritingRun run) => Directory.EnumerateFiles(_firstFolder, run.TemporaryFiles).Any();

    /// <summary>Runs the command to its end.</summary>
    public async Task RunAsync()
    {
        using var run = WritingRun.Start(Folder, Arguments);
        Assert.Equal((0, ""), await run.EndAsync());
    }

    /// <summary>Every file but what stopped runs have left.</summary>
    public Dictionary<string, string> Read() => _disk.Files().Where(path => !IsLeftover(path)).ToDictionary(path => path, _disk.Read);

    /// <summary>What stopped runs have left.</summary>
    public IEnumerable<string> Leftovers() => _disk.Files().Where(IsLeftover);

    /// <summary>Holds every file to be the old one or the new one, byte for byte, and none to be lost. Gives how many are new.</summary>
    public int AssertWhole()
    {
        var now = Read();
        Assert.Equal(_before.Keys.Union(After.Keys).Order(StringComparer.Ordinal), now.Keys.Order(StringComparer.Ordinal));
        foreach (var (path, text) in now)
        {
            Assert.True(
                (_before.TryGetValue(path, out var old) && text == old) || (After.TryGetValue(path, out var fresh) && text == fresh),
                $"{path} is neither the old file nor the new one:\n{text}");
        }

        return now.Count(file => file.Value == After[file.Key] && file.Value != _before.GetValueOrDefault(file.Key));
    }

    public void Dispose() => _disk.Dispose();

    private async Task MeasureAsync()
    {
        var start = TimeProvider.System.GetTimestamp();
        var (first, last) = (start, start);
        using FileSystemWatcher watcher = new(Folder) { IncludeSubdirectories = true };
        watcher.Created += (_, file) =>
        {
            if (first == start && IsLeftover(file.Name!))
            {
                (first, _firstFolder) = (TimeProvider.System.GetTimestamp(), Path.GetDirectoryName(file.FullPath)!);
            }
        };
        watcher.Renamed += (_, _) => last = TimeProvider.System.GetTimestamp();
        watcher.EnableRaisingEvents = true;
        await RunAsync();
        Usual = TimeProvider.System.GetElapsedTime(start);
        Assert.True(SpinWait.SpinUntil(() => last != start, TimeSpan.FromMinutes(1)), "Nothing was written.");
        UsualWriting = TimeProvider.System.GetElapsedTime(first, last);
    }

    private static string[] ArgumentsOf(string verb) => verb switch
    {
        "build" => ["build", ".", "-o", "packs"],
        "cache" => ["check", ".", "--cache", "cache", "--format", "json", "--fail-on", "never"],
        "baseline" => ["baseline", "write", ".", "-o", "baseline.json"],
        _ => [verb, "."],
    };

    private static bool IsLeftover(string path) => Leftover().IsMatch(path);

    [GeneratedRegex(@"(^|/)\.[^/]+\.[0-9a-f]{8}-[0-9]+-[0-9a-f]{8}\.tmp$")]
    private static partial Regex Leftover();
}
