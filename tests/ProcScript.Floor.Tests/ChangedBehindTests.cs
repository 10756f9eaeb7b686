using System.Net;
using System.Text.Json.Nodes;
using ProcScript.Jobs.Files;

namespace ProcScript.Floor.Tests;

/// <summary>What happens to the folder of a job while a tablet has it open.</summary>
public sealed class ChangedBehindTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_job_whose_journal_is_another_is_played_anew()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store, FloorJobs.Small);
        using var client = floor.Client();
        await client.AnswersAsync(job, Telling.Done("a", 1), Telling.Done("b", 2));
        var journal = Path.Combine(floor.Folder, job, JournalFile.Name);
        var lines = await File.ReadAllLinesAsync(journal, Stop);
        await File.WriteAllTextAsync(journal, string.Concat(lines.Take(2).Select(line => $"{line}\n")), Stop);

        var now = await client.AskAsync($"/api/jobs/{job}/now");

        Assert.Equal(2, (int)now["events"]!);
        Assert.Single(now["done"]!.AsArray());
    }

    [Fact]
    public async Task Nothing_is_told_to_a_job_whose_journal_was_damaged()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store, FloorJobs.Small);
        using var client = floor.Client();
        await client.AnswersAsync(job, Telling.Done("a", 1));
        var journal = Path.Combine(floor.Folder, job, JournalFile.Name);
        var text = await File.ReadAllTextAsync(journal, Stop);
        await File.WriteAllTextAsync(journal, text.Replace("\"Mara\"", "\"Nobody\"", StringComparison.Ordinal), Stop);

        using var answer = await client.TellAsync(job, Telling.Done("b", 2));
        var board = await client.WaitForAsync("/api/jobs", now => now["unreadable"]!.AsArray().Count > 0);

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.Contains("damaged in line 2", (string)JsonNode.Parse(await answer.Content.ReadAsStringAsync(Stop))!["detail"]!, StringComparison.Ordinal);
        Assert.Contains("damaged in line 2", (string)board["unreadable"]![0]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_that_was_taken_away_is_not_there_and_one_that_was_put_elsewhere_is()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store, FloorJobs.Small);
        using var client = floor.Client();
        await client.AnswersAsync(job, Telling.Done("a", 1));
        Directory.CreateDirectory(Path.Combine(floor.Folder, "2025"));
        Directory.Move(Path.Combine(floor.Folder, job), Path.Combine(floor.Folder, "2025", job));
        await client.AnswersAsync(job, Telling.Done("b", 2));
        var moved = await client.AskAsync($"/api/jobs?job={job}");
        Directory.Move(Path.Combine(floor.Folder, "2025", job), Path.Combine(floor.Folder, ".away"));

        using var gone = await client.TellAsync(job, Telling.Done("c", 3));
        var board = await client.WaitForAsync("/api/jobs", now => now["jobs"]!.AsArray().Count == 0);

        Assert.Equal(3, (int)moved["jobs"]![0]!["events"]!);
        Assert.Equal(HttpStatusCode.NotFound, gone.StatusCode);
        Assert.Empty(board["jobs"]!.AsArray());
    }

    [Fact]
    public async Task The_board_tells_of_jobs_that_are_asked_for_and_of_closed_ones_to_who_wants_them()
    {
        await using var floor = await RunningFloor.StartAsync();
        var (first, second) = (await FloorJobs.OpenAsync(floor.Store, FloorJobs.Small), await FloorJobs.OpenAsync(floor.Store, FloorJobs.Small));
        using var client = floor.Client();
        var closing = Telling.Event("c", "closed");
        (closing["text"], closing["despite"]) = ("sold for parts", (await client.AskAsync($"/api/jobs/{first}/now"))["beforeClosing"]!.DeepClone());
        await client.AnswersAsync(first, closing);

        Assert.Equal([second], Names(await client.WaitForAsync("/api/jobs", now => now["jobs"]!.AsArray().Count == 1)));
        Assert.Equal([second, first], Names(await client.AskAsync("/api/jobs?closed=yes")));
        Assert.Equal([first], Names(await client.AskAsync($"/api/jobs?job={first}&job=none")));
        using var many = await client.GetAsync($"/api/jobs?{string.Join('&', Enumerable.Range(0, 41).Select(i => $"job=j{i}"))}", Stop);
        Assert.Equal(HttpStatusCode.BadRequest, many.StatusCode);
        static IEnumerable<string> Names(JsonNode board) => board["jobs"]!.AsArray().Select(job => (string)job!["job"]!);
    }
}
