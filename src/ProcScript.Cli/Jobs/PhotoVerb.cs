using System.Security.Cryptography;
using ProcScript.Jobs.Intake;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cli.Jobs;

/// <summary><c>job photo</c>: keeps a picture with a job, under the hash of what it shows.</summary>
internal static class PhotoVerb
{
    /// <summary>Keeps it, then tells of it: no line of a journal names a file that is not there.</summary>
    /// <exception cref="UsageException">It cannot be read, or is no picture.</exception>
    public static async Task<ExitCode> RunAsync(EventRequest request, string file, int? step, string? text, Surroundings around, CancellationToken stop)
    {
        var content = await ReadAsync(Path.GetFullPath(file, around.CurrentFolder), file, stop);
        var ending = PhotoFile.EndingOf(content) ?? throw new UsageException($"'{file}' is no picture that browsers show: JPEG, PNG and WebP are.");
        var hash = Convert.ToHexStringLower(SHA256.HashData(content));
        var path = $"{LoadedJob.PhotoFolder}/{hash}.{ending}";
        var place = JobPlace.Find(request.Job, around.CurrentFolder);
        var told = EventVerb.New(EventKind.Photo, request, around) with { File = path, FileHash = hash, Step = step, Text = text };
        var job = await EventVerb.LoadAsync(place, stop);
        if ((EventIntake.Take(job.Replay, told).Refusal ?? PhotoFile.Refusal(await place.Store.ListFilesAsync(place.Name, LoadedJob.PhotoFolder, stop), path)) is { } why)
        {
            throw new UsageException(why);
        }

        await place.Store.AddFilesAsync(place.Name, new Dictionary<string, byte[]>(StringComparer.Ordinal) { [path] = content }, stop);
        return await EventVerb.RunAsync(request, [told], around, stop);
    }

    private static async Task<byte[]> ReadAsync(string path, string typed, CancellationToken stop)
    {
        try
        {
            var length = new FileInfo(path).Length;
            return length > PhotoFile.MostBytes
                ? throw new UsageException($"'{typed}' has {length >> 20} MiB; {PhotoFile.MostBytes >> 20} MiB is the most.")
                : await File.ReadAllBytesAsync(path, stop);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"cannot read '{typed}': {failure.Message}");
        }
    }
}
