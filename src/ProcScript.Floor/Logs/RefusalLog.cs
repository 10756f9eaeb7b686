using System.Text.Json;
using ProcScript.Floor.Answers;
using ProcScript.Floor.Doors;

namespace ProcScript.Floor.Logs;

/// <summary>Writes down what was refused: who asked, for what, and why not. One JSON object a line, so that nothing that a stranger sends looks like a line of ours.</summary>
/// <param name="path">The file.</param>
/// <param name="faults">Where it is said too.</param>
/// <param name="clock">The clock.</param>
internal sealed class RefusalLog(string path, TextWriter faults, TimeProvider clock)
{
    /// <summary>How long the file may grow, in bytes, before it is put aside; the one put aside before goes then.</summary>
    private const long Longest = 5 << 20;

    private const int LongestWord = 300;

    private readonly Lock _lock = new();

    /// <summary>Writes down a request that was refused.</summary>
    public void Write(HttpContext context, int status, string why) =>
        Write(new Refusal(clock.GetUtcNow(), $"{context.Connection.RemoteIpAddress}", context.Items[Doorkeeper.Who] as string, Short($"{context.Request.Method} {context.Request.Path}"), status, Short(why)));

    /// <summary>Writes down what the web server refused before it was a request.</summary>
    public void Write(string why) => Write(new Refusal(clock.GetUtcNow(), "", null, "", StatusCodes.Status400BadRequest, Short(why)));

    private void Write(Refusal refusal)
    {
        var line = JsonSerializer.Serialize(refusal, FloorJson.Published.Refusal);
        lock (_lock)
        {
            try
            {
                if (new FileInfo(path) is { Exists: true, Length: > Longest })
                {
                    File.Move(path, $"{path}.1", overwrite: true);
                }

                File.AppendAllText(path, $"{line}\n");
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                faults.WriteLine($"cannot write '{path}': {failure.Message}");
            }

            faults.WriteLine(line);
        }
    }

    private static string Short(string text) => text.Length <= LongestWord ? text : text[..LongestWord] + "…";
}

/// <summary>What was refused.</summary>
/// <param name="At">When.</param>
/// <param name="From">The address that it came from.</param>
/// <param name="Tablet">Which paired tablet it was; null where it was none.</param>
/// <param name="What">What was asked for.</param>
/// <param name="Status">The status of HTTP.</param>
/// <param name="Why">Why not.</param>
internal sealed record Refusal(DateTimeOffset At, string From, string? Tablet, string What, int Status, string Why);
