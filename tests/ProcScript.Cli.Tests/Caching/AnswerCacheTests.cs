using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Cli.Caching;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Caching;

public sealed class AnswerCacheTests : IDisposable
{
    private const string Recalled = "recalled\n";

    private readonly TemporaryFolder _disk = new();
    private readonly TemporaryFolder _cache = new();

    public AnswerCacheTests()
    {
        for (var i = 0; i < AnswerCache.FewestFiles; i++)
        {
            _disk.With(string.Create(CultureInfo.InvariantCulture, $"shelf/p{i:D3}.proc"), i == 7 ? Sample.Steps("remove cover") : Sample.Text);
        }

        _disk.With("shop.proc", Sample.Machine).With("shelf/user.proc", "use \"../shop.proc\"\n" + Sample.Procedure);
    }

    private static ImmutableSortedDictionary<string, Action<TemporaryFolder>> Changing { get; } =
        ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, new Dictionary<string, Action<TemporaryFolder>>
        {
            ["a file is edited"] = disk => disk.With("shelf/p020.proc", Sample.Steps("remove cuver")),
            ["a file is mended"] = disk => disk.With("shelf/p007.proc", Sample.Text),
            ["a file is renamed"] = disk => File.Move(disk["shelf/p007.proc"], disk["shelf/p999.proc"]),
            ["a file is deleted"] = disk => File.Delete(disk["shelf/p007.proc"]),
            ["a file is added"] = disk => disk.With("shelf/new.proc", Sample.Steps("remove cuver")),
            ["a used file outside is edited"] = disk => disk.With("shop.proc", ""),
            ["a used file outside is deleted"] = disk => File.Delete(disk["shop.proc"]),
            ["settings appear"] = disk => disk.With("procscript.json", """{ "severities": { "PRC3001": "off" } }"""),
        });

    public static TheoryData<string> Changes { get; } = [.. Changing.Keys];

    public void Dispose()
    {
        _disk.Dispose();
        _cache.Dispose();
    }

    [Fact]
    public async Task The_same_question_is_answered_from_the_cache()
    {
        var first = await CheckAsync();
        var second = await CheckAsync();
        Tamper();

        Assert.Equal(ExitCode.Findings, first.Code);
        Assert.Equal(first, second);
        Assert.Equal(first with { Output = Recalled }, await CheckAsync());
        Assert.Equal(first, await CheckAsync("--no-cache"));
    }

    [Theory]
    [MemberData(nameof(Changes))]
    public async Task After_any_change_the_answer_is_that_of_a_fresh_check(string change)
    {
        var before = await CheckAsync();
        Tamper();

        Changing[change](_disk);

        var fresh = await CheckAsync("--no-cache");
        Assert.NotEqual(before, fresh);
        Assert.Equal(fresh, await CheckAsync());
        Assert.Equal(fresh, await CheckAsync());
    }

    [Fact]
    public async Task A_damaged_answer_is_none()
    {
        var fresh = await CheckAsync();
        var whole = File.ReadAllBytes(AnswerFile());
        for (var damage = 0; damage < 6; damage++)
        {
            var bytes = whole[..(damage % 2 == 0 ? whole.Length : whole.Length * damage / 6)];
            bytes[bytes.Length * damage / 6] ^= (byte)(1 << (damage % 8));
            File.WriteAllBytes(AnswerFile(), bytes);

            Assert.Equal(fresh, await CheckAsync());
        }
    }

    [Fact]
    public async Task Another_day_other_arguments_and_other_surroundings_are_another_question()
    {
        await CheckAsync();
        Tamper();

        Assert.NotEqual(Recalled, (await CheckAsync("--fail-on", "never")).Output);
        Assert.NotEqual(Recalled, (await CheckAsync(around => around with { Clock = new NextDay() })).Output);
        Assert.NotEqual(Recalled, (await CheckAsync(around => around with { Variable = name => name == "NO_COLOR" ? "1" : null })).Output);
        Assert.NotEqual(Recalled, (await CheckAsync("--format", "sarif")).Output);
    }

    [Fact]
    public async Task What_depends_on_more_than_sources_is_not_remembered()
    {
        await CheckAsync("--time");
        await CheckAsync("--output", _disk["told.txt"]);
        await CheckAsync(around => around with { OutputIsTerminal = true });

        Assert.Empty(_cache.Files());
    }

    [Fact]
    public async Task Runs_at_once_leave_one_whole_answer()
    {
        var fresh = await CheckAsync("--no-cache");

        var runs = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => CheckAsync())));

        Assert.All(runs, run => Assert.Equal(fresh, run));
        Assert.NotNull(CachedAnswer.Read(File.ReadAllText(AnswerFile())));
        Assert.DoesNotContain(_cache.Files(), file => file.EndsWith(".tmp", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Nothing_is_remembered_where_it_is_not_wanted_or_not_worth_it()
    {
        await CheckAsync("--no-cache");
        await CliRun.AtAsync(_disk.Path, "check", "shop.proc", "--cache", _cache["answers"]);

        Assert.Empty(_cache.Files());
    }

    [Fact]
    public async Task Without_an_option_it_lies_in_the_users_own_cache_folder_and_out_of_Git()
    {
        await CliRun.AtAsync(_disk.Path, ["check", "shelf"], null, around => around with { Variable = name => name == "XDG_CACHE_HOME" ? _cache.Path : null });

        Assert.Equal("*\n", _cache.Read("procscript/.gitignore"));
        Assert.Single(_cache.Files(), file => file.EndsWith(".answer", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_cache_that_cannot_be_written_costs_no_answer()
    {
        var fresh = await CheckAsync("--no-cache");
        _cache.With("answers", "a file");

        var run = await CheckAsync();

        Assert.Equal((fresh.Code, fresh.Output), (run.Code, run.Output));
        Assert.StartsWith("procscript: nothing is remembered: cannot write ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_oldest_answers_go()
    {
        for (var i = 0; i < AnswerCache.MostAnswers + 3; i++)
        {
            _cache.With(string.Create(CultureInfo.InvariantCulture, $"answers/old{i}.answer"), "old");
        }

        await CheckAsync();

        Assert.Equal(AnswerCache.MostAnswers, _cache.Files().Count(file => file.EndsWith(".answer", StringComparison.Ordinal)));
    }

    private Task<CliRun> CheckAsync(params string[] more) => CheckAsync(around => around, more);

    private Task<CliRun> CheckAsync(Func<Surroundings, Surroundings> change, params string[] more) =>
        CliRun.AtAsync(_disk.Path, ["check", "shelf", "--cache", _cache["answers"], .. more], null, change);

    /// <summary>Makes the remembered answer say something that no check says, so that a recalled one is known.</summary>
    private void Tamper() =>
        File.WriteAllText(AnswerFile(), (CachedAnswer.Read(File.ReadAllText(AnswerFile()))! with { Text = Recalled }).Write());

    private string AnswerFile() => _cache[_cache.Files().Single(file => file.EndsWith(".answer", StringComparison.Ordinal))];

    private sealed class NextDay : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(StoppedClock.Day.AddDays(1), TimeOnly.MinValue, TimeSpan.Zero);
    }
}
