using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using ProcScript.Floor.Doors;

namespace ProcScript.Floor.Endpoints;

/// <summary>Reads what is sent, as far as it may be long, and answers.</summary>
internal static class Bodies
{
    /// <summary>Reads a body whole.</summary>
    /// <param name="context">The request.</param>
    /// <param name="most">How long it may be, in bytes.</param>
    public static async Task<byte[]> ReadAsync(HttpContext context, int most)
    {
        using MemoryStream read = new();
        var buffer = new byte[64 * 1024];
        var length = 0L;
        for (int part; (part = await context.Request.Body.ReadAsync(buffer, context.RequestAborted)) > 0;)
        {
            // What is too long is heard out, as far as the server listens at all: a browser takes an answer only after its question.
            length += part;
            if (length <= most)
            {
                read.Write(buffer, 0, part);
            }
        }

        return length <= most ? read.ToArray() : throw new RefusedException(StatusCodes.Status413PayloadTooLarge, $"That is too long: {most / 1024} KB is the most.");
    }

    /// <summary>Reads a body as JSON.</summary>
    /// <param name="context">The request.</param>
    /// <param name="most">How long it may be, in bytes.</param>
    /// <param name="type">What it is.</param>
    public static async Task<T> ReadJsonAsync<T>(HttpContext context, int most, JsonTypeInfo<T> type)
    {
        if (!context.Request.HasJsonContentType())
        {
            throw new RefusedException(StatusCodes.Status415UnsupportedMediaType, "Send JSON, and say so: Content-Type: application/json.");
        }

        var body = await ReadAsync(context, most);
        try
        {
            return JsonSerializer.Deserialize(body, type) ?? throw new RefusedException(StatusCodes.Status400BadRequest, "There is nothing in it.");
        }
        catch (JsonException fault)
        {
            throw new RefusedException(StatusCodes.Status400BadRequest, $"That is not what belongs here: {fault.Message}");
        }
    }

    /// <summary>Answers with JSON.</summary>
    public static Task AnswerAsync<T>(HttpContext context, T answer, JsonTypeInfo<T> type)
    {
        context.Response.ContentType = "application/json; charset=utf-8";
        return JsonSerializer.SerializeAsync(context.Response.Body, answer, type, context.RequestAborted);
    }
}
