using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>A library that a command changes in many files, with every file as it is before and as it comes out.</summary>
internal sealed partial class WritingJob : IDisposable
{
    private readonly TemporaryFolder _disk = new();
    private readonly Dictionary<string, string> _before;

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

    /// <summary>The job of a verb, done once without being stopped.</summary>
    public static async Task<WritingJob> OfAsync(string verb, int files)
    {
        var sources = Enumerable.Range(0, files).ToDictionary(
            i => string.Create(CultureInfo.InvariantCulture, $"f{i % 4}/job{i}.proc"),
            i => Source(verb, i));
        WritingJob job = new(verb == "build" ? ["build", ".", "-o", "packs"] : [verb, "."], sources);
        job.Reset();
        if (verb == "build")
        {
            // There are packs of an earlier state of the library, so that every file is an old one or a new one.
            await job.RunAsync();
            foreach (var (path, text) in job.Read())
            {
                job._before[path] = text;
            }

            foreach (var path in sources.Keys.ToList())
            {
                job._before[path] = job._before[path].Replace("The lower one first.", "The upper one first.", StringComparison.Ordinal);
            }

            job.Reset();
        }

        var start = TimeProvider.System.GetTimestamp();
        await job.RunAsync();
        job.Usual = TimeProvider.System.GetElapsedTime(start);
        job.After = job.Read();
        Assert.NotEqual(job._before.Values.Order(StringComparer.Ordinal), job.After.Values.Order(StringComparer.Ordinal));
        return job;
    }

    /// <summary>Puts every file back as it was before; what else lies there stays.</summary>
    public void Reset()
    {
        foreach (var (path, text) in _before)
        {
            _disk.With(path, text);
        }
    }

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

    private static string Source(string verb, int i)
    {
        var text = Sample.Text.Replace("procedure p ", string.Create(CultureInfo.InvariantCulture, $"procedure p{i} "), StringComparison.Ordinal);
        return verb switch
        {
            "fix" => text.Replace("part pump \"pump\" {\n", "part pump \"pump\" {\n notice \"Wipe it.\"\n danger \"It kills. Stay away.\"\n", StringComparison.Ordinal),
            "format" => text.Replace(" ", "   ", StringComparison.Ordinal),
            _ => text,
        };
    }

    private static bool IsLeftover(string path) => Leftover().IsMatch(path);

    [GeneratedRegex(@"(^|/)\.[^/]+\.[0-9a-f]{8}-[0-9]+-[0-9a-f]{8}\.tmp$")]
    private static partial Regex Leftover();
}
