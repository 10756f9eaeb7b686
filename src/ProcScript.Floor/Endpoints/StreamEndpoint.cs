using System.Text;
using System.Text.Json;
using ProcScript.Floor.Answers;
using ProcScript.Floor.Desk;

namespace ProcScript.Floor.Endpoints;

/// <summary>Tells whoever watches, as server-sent events, which jobs have changed.</summary>
/// <param name="feed">The changes.</param>
/// <param name="stopping">Ends all watching with the server.</param>
internal sealed class StreamEndpoint(ChangeFeed feed, CancellationToken stopping)
{
    /// <summary>How often something is said although nothing has changed: a line that is dead is noticed.</summary>
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(15);

    /// <summary>Says where it is reached.</summary>
    public void Map(IEndpointRouteBuilder routes) => routes.MapGet("/api/stream", WatchAsync);

    private async Task WatchAsync(HttpContext context)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, stopping);
        var since = context.Request.Headers["Last-Event-ID"].ToString();
        using var watch = feed.Begin(since.Length > 0 ? since : null);
        context.Response.ContentType = "text/event-stream";
        context.Response.Headers["X-Accel-Buffering"] = "no";
        try
        {
            await SayAsync(context, "retry: 2000\n\n", stop.Token);
            var waiting = watch.Changes.WaitToReadAsync(stop.Token).AsTask();
            while (true)
            {
                if (await Task.WhenAny(waiting, Task.Delay(Quiet, stop.Token)) != waiting)
                {
                    stop.Token.ThrowIfCancellationRequested();
                    await SayAsync(context, ": still here\n\n", stop.Token);
                    continue;
                }

                if (!await waiting)
                {
                    return;
                }

                StringBuilder told = new();
                while (watch.Changes.TryRead(out var change))
                {
                    told.Append("id: ").Append(change.Id).Append("\ndata: ").Append(JsonSerializer.Serialize(change.Change, FloorJson.Published.JobChange)).Append("\n\n");
                }

                await SayAsync(context, told.ToString(), stop.Token);
                waiting = watch.Changes.WaitToReadAsync(stop.Token).AsTask();
            }
        }
        catch (OperationCanceledException)
        {
            // The tablet has gone, or the server is stopped.
        }
    }

    private static async Task SayAsync(HttpContext context, string text, CancellationToken stop)
    {
        await context.Response.WriteAsync(text, stop);
        await context.Response.Body.FlushAsync(stop);
    }
}
