using ProcScript.Cards.Records;
using ProcScript.Cli.Output;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Jobs;

/// <summary><c>job labels</c>: labels for bags and parts, with codes to scan.</summary>
internal static class LabelsVerb
{
    private const string Name = "job-labels.html";

    /// <summary>Writes them.</summary>
    /// <exception cref="UsageException">The address is none.</exception>
    public static async Task<ExitCode> RunAsync(string typed, string? address, string? output, ColourChoice colour, Surroundings around, CancellationToken stop)
    {
        var place = JobPlace.Find(typed, around.CurrentFolder);
        var job = await EventVerb.LoadAsync(place, stop);
        var text = JobLabelPage.Html(job, address is null ? null : Address(address));
        if (output is { } file && OutputFile.IsOutput(file))
        {
            around.Output.Write(LogCommands.DisarmLines(text));
            return ExitCode.Clean;
        }

        using PendingFiles files = new();
        files.Add(output is null ? Path.Combine(place.Folder, Name) : Path.GetFullPath(output, around.CurrentFolder), text);
        files.Commit(replace: true);
        Terminal.For(around, colour).WriteLine(new Piece($"wrote {output ?? Path.Combine(typed, Name)}"));
        return ExitCode.Clean;
    }

    private static Uri Address(string typed) =>
        Uri.TryCreate(typed.TrimEnd('/') + "/", UriKind.Absolute, out var address) && address.Scheme is "http" or "https" && address is { Query: "", Fragment: "", UserInfo: "" }
            ? address
            : throw new UsageException($"'{typed}' is no address of a floor server: https://floor.example:8443 is one.");
}
