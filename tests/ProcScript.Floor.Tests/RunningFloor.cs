using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Tests;

/// <summary>A real server on a free port, with a folder of jobs of its own.</summary>
internal sealed class RunningFloor : IAsyncDisposable
{
    private RunningFloor(string folder, IJobStore store, FloorServer server) => (Folder, Store, Server) = (folder, store, server);

    public string Folder { get; }

    public IJobStore Store { get; }

    public FloorServer Server { get; }

    public Uri Address => new(Server.Addresses[0]);

    /// <summary>Starts one.</summary>
    public static async Task<RunningFloor> StartAsync(bool pairing = false, bool lan = false, string? folder = null)
    {
        folder ??= Directory.CreateTempSubdirectory("floor-").FullName;
        FileJobStore store = new(folder);
        var server = await FloorServer.StartAsync(new FloorOptions { Folder = folder, Port = 0, Pairing = pairing, Lan = lan }, store, TextWriter.Null, TestContext.Current.CancellationToken);
        return new RunningFloor(folder, store, server);
    }

    /// <summary>A client as a tablet is one: it keeps cookies.</summary>
    public HttpClient Client() => new(new SocketsHttpHandler { CookieContainer = new CookieContainer(), SslOptions = { RemoteCertificateValidationCallback = (_, _, _, _) => true } }) { BaseAddress = Address };

    /// <summary>What the server has written down as refused.</summary>
    public IReadOnlyList<JsonNode> Refused()
    {
        var path = Path.Combine(Folder, ".floor", "refused.jsonl");
        return File.Exists(path) ? [.. File.ReadAllLines(path).Select(line => JsonNode.Parse(line)!)] : [];
    }

    /// <summary>The events of a job.</summary>
    public async Task<IReadOnlyList<JobEvent>> EventsAsync(string job)
    {
        var reading = await new FileJobStore(Folder).ReadAsync(job, CancellationToken.None);
        Assert.Null(reading.Fault);
        return [.. reading.Lines.Select(line => line.Event)];
    }

    public async ValueTask DisposeAsync()
    {
        await Server.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}

/// <summary>What tests tell a server.</summary>
internal static class Telling
{
    private const int MostLooks = 200;

    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(50);

    /// <summary>An event.</summary>
    public static JsonObject Event(string id, string kind, string by = "Mara") => new() { ["id"] = id, ["kind"] = kind, ["at"] = "2026-03-01T08:00:00Z", ["by"] = by };

    /// <summary>That a step is done.</summary>
    public static JsonObject Done(string id, int step, string by = "Mara")
    {
        var happened = Event(id, "done", by);
        happened["step"] = step;
        return happened;
    }

    /// <summary>Tells events.</summary>
    public static Task<HttpResponseMessage> TellAsync(this HttpClient client, string job, params JsonNode[] events) =>
        client.PostAsJsonAsync($"/api/jobs/{job}/events", new JsonObject { ["events"] = new JsonArray(events) }, TestContext.Current.CancellationToken);

    /// <summary>Tells events that are taken by the server, each or with a refusal.</summary>
    public static async Task<JsonArray> AnswersAsync(this HttpClient client, string job, params JsonNode[] events)
    {
        using var response = await client.TellAsync(job, events);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return (await response.Content.ReadFromJsonAsync<JsonNode>(TestContext.Current.CancellationToken))!["answers"]!.AsArray();
    }

    /// <summary>Reads a JSON document until it says what is waited for: what others do is seen at the next look.</summary>
    public static async Task<JsonNode> WaitForAsync(this HttpClient client, string path, Func<JsonNode, bool> isSo)
    {
        for (var i = 0; ; i++)
        {
            var now = await client.AskAsync(path);
            if (isSo(now) || i == MostLooks)
            {
                return now;
            }

            await Task.Delay(BetweenLooks, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Reads a JSON document.</summary>
    public static async Task<JsonNode> AskAsync(this HttpClient client, string path) => (await client.GetFromJsonAsync<JsonNode>(path, TestContext.Current.CancellationToken))!;
}
