using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using ProcScript.Floor.Documents;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Intake;
using ProcScript.Jobs.Journals;

namespace ProcScript.Floor.Tests;

/// <summary>What tablets tell stands in the journal, once, and comes back to all who watch.</summary>
public sealed class TellingTests
{
    private static readonly byte[] Pixel = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==");

    private static readonly byte[] OtherPixel = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void A_tablet_can_tell_all_that_a_journal_holds_but_for_what_its_keeper_puts_in()
    {
        string[] keepers = [nameof(JobEvent.Number), nameof(JobEvent.Logged), nameof(JobEvent.Previous), nameof(JobEvent.Job)];
        Assert.Equal(
            typeof(JobEvent).GetProperties().Select(one => one.Name).Except(keepers).Order(),
            typeof(ToldEvent).GetProperties().Select(one => one.Name).Order());
    }

    [Fact]
    public async Task An_event_that_is_sent_again_is_one_event()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();

        var first = await client.AnswersAsync(job, Telling.Done("a", 1), Telling.Event("p", "pause"));
        var again = await client.AnswersAsync(job, Telling.Done("a", 1), Telling.Event("p", "pause"));
        var other = await client.AnswersAsync(job, Telling.Done("a", 2));

        Assert.Equal(first.Select(answer => (int)answer!["number"]!), again.Select(answer => (int)answer!["number"]!));
        Assert.Equal(first.Select(answer => (string)answer!["hash"]!), again.Select(answer => (string)answer!["hash"]!));
        Assert.All(again, answer => Assert.True((bool)answer!["wasThere"]!));
        Assert.Contains("that identity", (string)other[0]!["refusal"]!, StringComparison.Ordinal);
        Assert.Equal(3, (await floor.EventsAsync(job)).Count);
    }

    [Fact]
    public async Task Two_who_tick_one_step_are_both_believed_and_it_counts_once()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();

        await client.AnswersAsync(job, Telling.Done("a", 1, "Mara"));
        var answer = await client.AnswersAsync(job, Telling.Done("b", 1, "Tomas"));
        var now = await client.AskAsync($"/api/jobs/{job}/now");

        Assert.Null(answer[0]!["refusal"]);
        Assert.Equal(["Mara", "Tomas"], (await floor.EventsAsync(job)).Skip(1).Select(happened => happened.By));
        var done = Assert.Single(now["done"]!.AsArray())!;
        Assert.Equal(("Mara", "Tomas"), ((string)done["by"]!, (string)done["also"]![0]!));
    }

    [Fact]
    public async Task What_cannot_be_is_refused_by_itself_and_the_rest_goes_on()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();
        var opened = Telling.Event("o", "opened");
        var rebased = Telling.Event("r", "rebased");
        rebased["file"] = "library";
        var photo = Telling.Event("f", "photo");
        photo["file"] = "photos/../journal.jsonl";
        photo["fileHash"] = new string('0', 64);
        var despite = Telling.Event("d", "note");
        (despite["text"], despite["despite"]) = ("x", new JsonArray("y"));

        var answers = await client.AnswersAsync(job, Telling.Done("a", 999), opened, rebased, photo, despite, Telling.Event("c", "closed"), Telling.Done("b", 1));

        Assert.All(answers.Take(6), answer => Assert.NotEqual("", (string)answer!["refusal"]!));
        Assert.Equal(2, (int)answers[6]!["number"]!);
        Assert.Equal(6, floor.Refused().Count);
        Assert.Equal([EventKind.Opened, EventKind.Done], (await floor.EventsAsync(job)).Select(happened => happened.Kind));
    }

    [Fact]
    public async Task A_script_in_a_name_stays_a_text()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();

        await client.AnswersAsync(job, Telling.Done("a", 1, "<script>alert(1)</script>"));
        var now = await client.AskAsync($"/api/jobs/{job}/now");

        Assert.Equal("<script>alert(1)</script>", (string)now["done"]![0]!["by"]!);
    }

    [Fact]
    public async Task The_tablets_clock_and_the_servers_stand_beside_each_other()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();

        await client.AnswersAsync(job, Telling.Done("a", 1));
        var line = (await floor.EventsAsync(job))[1];

        Assert.Equal(new DateTimeOffset(2026, 3, 1, 8, 0, 0, TimeSpan.Zero), line.At);
        Assert.True((DateTimeOffset.UtcNow - line.Logged).Duration() < TimeSpan.FromHours(1));
    }

    [Fact]
    public async Task A_job_is_closed_only_with_what_is_open_in_sight_and_a_reason()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();
        await client.AnswersAsync(job, Telling.Done("a", 1));
        var open = (await client.AskAsync($"/api/jobs/{job}/now"))["beforeClosing"]!.AsArray();
        JsonObject Closing(string id, string? text, bool withAll)
        {
            var closing = Telling.Event(id, "closed");
            closing["text"] = text;
            closing["despite"] = withAll ? open.DeepClone() : new JsonArray();
            return closing;
        }

        var answers = await client.AnswersAsync(job, Closing("1", "gone home", withAll: false), Closing("2", " ", withAll: true), Closing("3", "sold for parts", withAll: true), Telling.Done("b", 2));

        Assert.NotEmpty(open);
        Assert.Contains("Look again", (string)answers[0]!["refusal"]!, StringComparison.Ordinal);
        Assert.Contains("say why", (string)answers[1]!["refusal"]!, StringComparison.Ordinal);
        Assert.Null(answers[2]!["refusal"]);
        Assert.Contains("closed", (string)answers[3]!["refusal"]!, StringComparison.Ordinal);
        Assert.Equal(open.Select(one => (string)one!), (await floor.EventsAsync(job))[^1].Despite!.Value);
        Assert.Equal("closed", (string)(await client.AskAsync("/api/jobs?closed=yes"))["jobs"]![0]!["state"]!);
    }

    [Fact]
    public async Task A_photo_is_what_its_bytes_say()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();

        using var kept = await SendAsync(client, job, Pixel, "text/html");
        var photo = (await kept.Content.ReadFromJsonAsync<JsonNode>(Stop))!;
        using var none = await SendAsync(client, job, "<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>"u8.ToArray(), "image/png");
        using var broken = await SendAsync(client, job, Pixel[..20], "image/png");
        using var large = await SendAsync(client, job, new byte[(12 << 20) + 1], "image/png");
        var told = Telling.Event("p", "photo");
        (told["file"], told["fileHash"]) = ((string)photo["file"]!, (string)photo["fileHash"]!);
        var answers = await client.AnswersAsync(job, told);
        using var shown = await client.GetAsync($"/api/jobs/{job}/{(string)photo["file"]!}", Stop);

        Assert.Equal(HttpStatusCode.OK, kept.StatusCode);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, none.StatusCode);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, broken.StatusCode);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, large.StatusCode);
        Assert.Null(answers[0]!["refusal"]);
        Assert.Equal("image/png", shown.Content.Headers.ContentType!.MediaType);
        Assert.Equal(Pixel, await shown.Content.ReadAsByteArrayAsync(Stop));
    }

    [Fact]
    public async Task A_job_takes_so_many_photos_and_says_so()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store, FloorJobs.Small);
        using var client = floor.Client();
        using var first = await SendAsync(client, job, Pixel, "image/png");
        await floor.Store.AddFilesAsync(job, Enumerable.Range(1, PhotoFile.MostOfJob - 1).ToDictionary(i => $"photos/{i}.png", _ => Pixel), Stop);

        using var again = await SendAsync(client, job, Pixel, "image/png");
        using var more = await SendAsync(client, job, OtherPixel, "image/png");
        await floor.Store.AddFilesAsync(job, new Dictionary<string, byte[]> { ["photos/one more.png"] = Pixel }, Stop);
        using var still = await SendAsync(client, job, Pixel, "image/png");

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.OK), (first.StatusCode, again.StatusCode, still.StatusCode));
        Assert.Equal(HttpStatusCode.Conflict, more.StatusCode);
        Assert.Contains("300 are the most", (string)(await more.Content.ReadFromJsonAsync<JsonNode>(Stop))!["detail"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_watches_hears_of_every_change_and_after_a_break_of_what_was_missed()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();
        string last;
        using (var watch = await WatchAsync(client, null))
        {
            Assert.Equal("", (await NextAsync(watch)).Job);
            await client.AnswersAsync(job, Telling.Done("a", 1));
            (last, var changed, var events) = await NextAsync(watch);
            while (events < 2)
            {
                // That the job is there may be told first.
                (last, changed, events) = await NextAsync(watch);
            }

            Assert.Equal((job, 2), (changed, events));
        }

        await client.AnswersAsync(job, Telling.Done("b", 2));
        // Another program writes into the journal.
        await new FileJobStore(floor.Folder).AppendAsync(job, new JobEvent { Id = "other", Kind = EventKind.Note, At = DateTimeOffset.UtcNow, By = "Kern", Text = "from the command line" }, Stop);
        using var again = await WatchAsync(client, last);
        List<int> heard = [];
        while (!heard.Contains(4))
        {
            var change = await NextAsync(again);
            Assert.Equal(job, change.Job);
            heard.Add(change.Events);
        }

        Assert.Contains(3, heard);
        Assert.Contains("from the command line", (await client.AskAsync($"/api/jobs/{job}/events?after=3")).ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_that_has_left_its_cards_has_new_ones_made()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store, FloorJobs.Small);
        using var client = floor.Client();
        using var needless = await client.PostAsJsonAsync($"/api/jobs/{job}/refit", new JsonObject { ["by"] = "Mara" }, Stop);
        var before = await client.AskAsync($"/api/jobs/{job}");
        var steps = before["cards"]!["cards"]!.AsArray().SelectMany(card => card!["steps"]!.AsArray().Select(step => (Step: step!, Phase: (string)card["phase"]!))).ToList();
        var left = steps.First(step => step.Phase == "refit" && (int)step.Step["count"]! > 1).Step;
        await client.AnswersAsync(job, [.. steps.Select(step =>
        {
            var done = Telling.Done($"done {step.Step["number"]}", (int)step.Step["number"]!);
            done["count"] = step.Step == left ? (int)left["count"]! - 1 : null;
            return done;
        })]);

        using var made = await client.PostAsJsonAsync($"/api/jobs/{job}/refit", new JsonObject { ["by"] = "Mara" }, Stop);

        Assert.Equal(HttpStatusCode.Conflict, needless.StatusCode);
        Assert.True(made.StatusCode == HttpStatusCode.OK, await made.Content.ReadAsStringAsync(Stop));
        var now = (await made.Content.ReadFromJsonAsync<JsonNode>(Stop))!;
        Assert.NotEqual((string)before["cards"]!["revision"]!, (string)now["cards"]!["revision"]!);
        Assert.False((bool)now["now"]!["needsNewCards"]!);
        Assert.Equal((string)now["cards"]!["revision"]!, (await floor.EventsAsync(job))[^1].Plan);
        var line = (await client.AskAsync($"/api/jobs?job={job}"))["jobs"]![0]!;
        var newSteps = now["cards"]!["cards"]!.AsArray().Sum(card => card!["steps"]!.AsArray().Count);
        Assert.Equal((0, newSteps - now["now"]!["done"]!.AsArray().Count), ((int)line["done"]!, (int)line["steps"]!));
        Assert.Contains("pack-2/cards.html", await floor.Store.ListFilesAsync(job, "pack-2", Stop));
    }

    private static Task<HttpResponseMessage> SendAsync(HttpClient client, string job, byte[] photo, string type)
    {
        ByteArrayContent content = new(photo);
        content.Headers.ContentType = new MediaTypeHeaderValue(type);
        return client.PostAsync($"/api/jobs/{job}/photos", content, Stop);
    }

    private static async Task<StreamReader> WatchAsync(HttpClient client, string? since)
    {
        HttpRequestMessage request = new(HttpMethod.Get, "/api/stream");
        if (since is not null)
        {
            request.Headers.Add("Last-Event-ID", since);
        }

        var response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Stop);
        return new StreamReader(await response.Content.ReadAsStreamAsync(Stop));
    }

    private static async Task<(string Id, string Job, int Events)> NextAsync(StreamReader watch)
    {
        var id = "";
        while (await watch.ReadLineAsync(Stop) is { } line)
        {
            if (line.StartsWith("id: ", StringComparison.Ordinal))
            {
                id = line[4..];
            }
            else if (line.StartsWith("data: ", StringComparison.Ordinal))
            {
                var change = JsonNode.Parse(line[6..])!;
                return (id, (string)change["job"]!, (int)change["events"]!);
            }
        }

        throw new InvalidOperationException("The stream has ended.");
    }
}
