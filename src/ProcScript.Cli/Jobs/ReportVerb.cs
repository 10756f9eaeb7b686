using ProcScript.Cards.Records;
using ProcScript.Cli.Output;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Standing;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cli.Jobs;

/// <summary><c>job report</c>: what was done, to print and to file.</summary>
internal static class ReportVerb
{
    private const string Name = "as-done";

    /// <summary>Writes it.</summary>
    public static async Task<ExitCode> RunAsync(string typed, bool asPage, string? output, ColourChoice colour, Surroundings around, CancellationToken stop)
    {
        var place = JobPlace.Find(typed, around.CurrentFolder);
        var job = await EventVerb.LoadAsync(place, stop);
        var record = JobRecord.Of(job, await PhotosAsync(place, job, stop));
        var text = asPage ? RecordPage.Html(record) : RecordPage.Markdown(record);
        if (output is { } file && OutputFile.IsOutput(file))
        {
            around.Output.Write(LogCommands.DisarmLines(text));
            return ExitCode.Clean;
        }

        var path = output is null ? Path.Combine(place.Folder, asPage ? $"{Name}.html" : $"{Name}.md") : Path.GetFullPath(output, around.CurrentFolder);
        using PendingFiles files = new();
        files.Add(path, text);
        files.Commit(replace: true);
        Terminal.For(around, colour).WriteLine(new Piece($"wrote {(output ?? Path.Combine(typed, Path.GetFileName(path)))}"));
        return ExitCode.Clean;
    }

    private static async Task<Dictionary<string, byte[]>> PhotosAsync(JobPlace place, LoadedJob job, CancellationToken stop)
    {
        var photos = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var path in job.Replay.Events.Select(happened => happened.File).OfType<string>().Where(path => path.StartsWith(LoadedJob.PhotoFolder + "/", StringComparison.Ordinal)).Distinct())
        {
            if (await place.Store.ReadFileAsync(place.Name, path, stop) is { } content)
            {
                photos[path] = content;
            }
        }

        return photos;
    }
}
