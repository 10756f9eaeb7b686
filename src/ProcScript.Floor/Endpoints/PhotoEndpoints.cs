using System.Text.RegularExpressions;
using ProcScript.Floor.Answers;
using ProcScript.Floor.Desk;
using ProcScript.Floor.Documents;
using ProcScript.Floor.Doors;
using ProcScript.Jobs.Intake;
using ProcScript.Jobs.Stores;
using ProcScript.Model.Figures;

namespace ProcScript.Floor.Endpoints;

/// <summary>
/// Photos of a job. What a photo is, its own bytes say; what the camera has noted beside the picture, such as where it was taken, is left out.
/// </summary>
/// <param name="store">Where they are kept.</param>
/// <param name="desk">The jobs.</param>
internal sealed partial class PhotoEndpoints(IJobStore store, JobDesk desk)
{
    /// <summary>How long a photo may be, in bytes.</summary>
    public const int Longest = 12 << 20;

    private const long MostPixels = 120_000_000;

    /// <summary>Says where they are reached.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/api/jobs/{job}/photos", KeepAsync);
        routes.MapGet("/api/jobs/{job}/photos", ListAsync);
        routes.MapGet("/api/jobs/{job}/photos/{name}", ShowAsync);
    }

    private async Task KeepAsync(HttpContext context)
    {
        var job = JobEndpoints.Job(context);
        var now = await desk.NowAsync(job, context.RequestAborted);
        if (now.Closed is not null)
        {
            throw new RefusedException(StatusCodes.Status409Conflict, "The job is closed: no photo can be added to it.");
        }

        var sent = await Bodies.ReadAsync(context, Longest);
        var (ending, photo) = Examine(sent);
        var path = $"{LoadedJob.PhotoFolder}/{photo.Hash}.{ending}";
        if (PhotoFile.Refusal(await store.ListFilesAsync(job, LoadedJob.PhotoFolder, context.RequestAborted), path) is { } why)
        {
            throw new RefusedException(StatusCodes.Status409Conflict, $"This photo is not kept: {why}");
        }

        await store.AddFilesAsync(job, new Dictionary<string, byte[]>(StringComparer.Ordinal) { [path] = [.. photo.Content] }, CancellationToken.None);
        await Bodies.AnswerAsync(context, new KeptPhoto(path, photo.Hash, photo.Width, photo.Height), FloorJson.Published.KeptPhoto);
    }

    private async Task ListAsync(HttpContext context)
    {
        var job = JobEndpoints.Job(context);
        await desk.NowAsync(job, context.RequestAborted);
        await Bodies.AnswerAsync(context, new KeptPhotos(await store.ListFilesAsync(job, LoadedJob.PhotoFolder, context.RequestAborted)), FloorJson.Published.KeptPhotos);
    }

    private async Task ShowAsync(HttpContext context)
    {
        var (job, name) = (JobEndpoints.Job(context), (string)context.Request.RouteValues["name"]!);
        if (!JobNames.IsName(job) || !PhotoName().IsMatch(name))
        {
            throw new RefusedException(StatusCodes.Status400BadRequest, $"'{name}' is no name of a photo.");
        }

        var photo = await store.ReadFileAsync(job, $"{LoadedJob.PhotoFolder}/{name}", context.RequestAborted)
            ?? throw new RefusedException(StatusCodes.Status404NotFound, "There is no such photo.");
        context.Response.ContentType = FigureFormats.MediaType(FigureFormats.ByName(name)!.Value);
        // It is called by what it holds: it can be no other.
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        await context.Response.Body.WriteAsync(photo, context.RequestAborted);
    }

    private static (string Ending, ExaminedFigure Photo) Examine(byte[] sent)
    {
        var ending = PhotoFile.EndingOf(sent) ?? throw new RefusedException(StatusCodes.Status415UnsupportedMediaType, "That is no photo: JPEG, PNG and WebP are.");
        var photo = FigureFile.Of(sent).Examine($"photo.{ending}", new FigureLimits(Longest, MostPixels));
        return photo.Trouble switch
        {
            FigureTrouble.None => (ending, photo),
            FigureTrouble.TooManyPixels => throw new RefusedException(StatusCodes.Status413PayloadTooLarge, $"The photo has {photo.Detail}: 120 million are the most."),
            _ => throw new RefusedException(StatusCodes.Status415UnsupportedMediaType, "The photo is damaged. Take it again."),
        };
    }

    [GeneratedRegex("^[0-9a-f]{64}\\.(jpg|png|webp)$", RegexOptions.CultureInvariant)]
    private static partial Regex PhotoName();
}
