using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json.Nodes;

namespace ProcScript.FloorBench;

/// <summary>A tablet as the page is one: it tells one event at a time, watches, and looks how its job stands when that has changed.</summary>
/// <param name="server">The server.</param>
/// <param name="job">The job.</param>
/// <param name="number">Which tablet it is.</param>
internal sealed class BenchTablet(Uri server, string job, int number)
{
    private static readonly TimeSpan Gathered = TimeSpan.FromMilliseconds(300);

    private readonly HttpClient _client = new(new SocketsHttpHandler()) { BaseAddress = server };

    /// <summary>How long each event took until the server said that it is safe.</summary>
    public List<TimeSpan> Latencies { get; } = [];

    /// <summary>How often it looked how its job stands.</summary>
    public int Looks { get; private set; }

    /// <summary>Tells events, each in its turn.</summary>
    /// <param name="span">For how long.</param>
    /// <param name="pause">How long from one to the next.</param>
    public async Task TellAsync(TimeSpan span, TimeSpan pause)
    {
        var start = Stopwatch.StartNew();
        await Task.Delay(pause * number / 50);
        for (var i = 0; start.Elapsed < span; i++)
        {
            JsonObject told = new() { ["id"] = $"{number}-{i}", ["at"] = DateTimeOffset.UtcNow.ToString("O"), ["by"] = $"Tablet {number}", ["kind"] = (i % 4) switch { 0 => "done", 3 => "undone", _ => "note" } };
            if (i % 4 is 0 or 3)
            {
                // Each has a step of its own, so that what it undoes is done.
                told["step"] = 1 + (number / 10);
            }
            else
            {
                told["text"] = $"What tablet {number} has to tell.";
            }

            var watch = Stopwatch.StartNew();
            using var answer = await _client.PostAsJsonAsync($"/api/jobs/{job}/events", new JsonObject { ["events"] = new JsonArray(told) });
            var said = (await answer.Content.ReadFromJsonAsync<JsonNode>())!["answers"]![0]!;
            Latencies.Add(watch.Elapsed);
            if (said["refusal"] is { } refusal)
            {
                throw new InvalidOperationException($"{told.ToJsonString()}: {refusal}");
            }

            var rest = pause - watch.Elapsed;
            await Task.Delay(rest > TimeSpan.Zero ? rest : TimeSpan.Zero);
        }
    }

    /// <summary>Looks how the job stands.</summary>
    public async Task NowAsync(CancellationToken stop)
    {
        await _client.GetByteArrayAsync($"/api/jobs/{job}/now", stop);
        Looks++;
    }

    /// <summary>Watches until it is ended.</summary>
    public async Task WatchAsync(CancellationToken stop)
    {
        try
        {
            using var response = await _client.GetAsync("/api/stream", HttpCompletionOption.ResponseHeadersRead, stop);
            using StreamReader reader = new(await response.Content.ReadAsStreamAsync(stop));
            var looking = Task.CompletedTask;
            while (await reader.ReadLineAsync(stop) is { } line)
            {
                if (line.Contains($"\"{job}\"", StringComparison.Ordinal) && looking.IsCompleted)
                {
                    looking = LookSoonAsync(stop);
                }
            }
        }
        catch (OperationCanceledException)
        {
            // It is over.
        }
    }

    private async Task LookSoonAsync(CancellationToken stop)
    {
        try
        {
            await Task.Delay(Gathered, stop);
            await NowAsync(stop);
        }
        catch (OperationCanceledException)
        {
            // It is over.
        }
    }
}
