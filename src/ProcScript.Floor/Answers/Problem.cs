using System.Text.Json;
using Microsoft.AspNetCore.WebUtilities;

namespace ProcScript.Floor.Answers;

/// <summary>What was refused, as RFC 9457 has it.</summary>
/// <param name="Title">What HTTP calls it.</param>
/// <param name="Status">The status of HTTP.</param>
/// <param name="Detail">Why, as a sentence for whoever holds the tablet.</param>
internal sealed record Problem(string Title, int Status, string Detail)
{
    /// <summary>Answers with one, where there is no answer yet.</summary>
    public static async Task WriteAsync(HttpContext context, int status, string why)
    {
        if (context.Response.HasStarted)
        {
            context.Abort();
            return;
        }

        context.Response.StatusCode = status;
        context.Response.ContentType = "application/problem+json";
        context.Response.Headers.CacheControl = "no-store";
        await context.Response.WriteAsync(JsonSerializer.Serialize(new Problem(ReasonPhrases.GetReasonPhrase(status), status, why), FloorJson.Published.Problem), context.RequestAborted);
    }
}
