using System.Globalization;
using ProcScript.Floor.Answers;
using ProcScript.Floor.Desk;
using ProcScript.Floor.Documents;
using ProcScript.Floor.Doors;
using ProcScript.Floor.Logs;
using ProcScript.Jobs.Intake;

namespace ProcScript.Floor.Endpoints;

/// <summary>The jobs, and what is told of them.</summary>
/// <param name="desk">The jobs.</param>
/// <param name="board">The board.</param>
/// <param name="log">Where refusals are written down.</param>
internal sealed class JobEndpoints(JobDesk desk, ShopBoard board, RefusalLog log)
{
    private const int LongestTelling = 1 << 20;
    private const int LongestRequest = 2_000;
    private const int MostLines = 40;

    /// <summary>Says where they are reached.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/jobs", BoardAsync);
        routes.MapGet("/api/jobs/{job}", PageAsync);
        routes.MapGet("/api/jobs/{job}/now", NowAsync);
        routes.MapGet("/api/jobs/{job}/events", EventsAsync);
        routes.MapPost("/api/jobs/{job}/events", TellAsync);
        routes.MapPost("/api/jobs/{job}/refit", RefitAsync);
    }

    /// <summary>The job that a request is about.</summary>
    public static string Job(HttpContext context) => (string)context.Request.RouteValues["job"]!;

    private async Task BoardAsync(HttpContext context)
    {
        var only = context.Request.Query["job"].OfType<string>().ToList();
        if (only.Count > MostLines)
        {
            throw new RefusedException(StatusCodes.Status400BadRequest, $"Ask for {MostLines} jobs at the most, or for all.");
        }

        var withClosed = only.Count > 0 || context.Request.Query["closed"].ToString() == "yes";
        await Bodies.AnswerAsync(context, await board.AsBoardAsync(withClosed, only, context.RequestAborted), FloorJson.Published.Board);
    }

    private async Task PageAsync(HttpContext context) => await Bodies.AnswerAsync(context, await desk.PageAsync(Job(context), context.RequestAborted), FloorJson.Published.JobPage);

    private async Task NowAsync(HttpContext context) => await Bodies.AnswerAsync(context, await desk.NowAsync(Job(context), context.RequestAborted), FloorJson.Published.JobNow);

    private async Task EventsAsync(HttpContext context)
    {
        var after = context.Request.Query["after"].ToString();
        var number = 0;
        if (after.Length > 0 && !int.TryParse(after, NumberStyles.None, CultureInfo.InvariantCulture, out number))
        {
            throw new RefusedException(StatusCodes.Status400BadRequest, "after is the number of an event.");
        }

        await Bodies.AnswerAsync(context, await desk.EventsAsync(Job(context), number, context.RequestAborted), FloorJson.Published.JournalPart);
    }

    private async Task RefitAsync(HttpContext context)
    {
        var request = await Bodies.ReadJsonAsync(context, LongestRequest, FloorJson.Published.RefitRequest);
        if (request.By.Trim().Length is 0 or > EventIntake.LongestName)
        {
            throw new RefusedException(StatusCodes.Status400BadRequest, "Say who asks for new cards.");
        }

        await Bodies.AnswerAsync(context, await desk.RefitAsync(Job(context), request.By.Trim(), CancellationToken.None), FloorJson.Published.JobPage);
    }

    private async Task TellAsync(HttpContext context)
    {
        var told = await Bodies.ReadJsonAsync(context, LongestTelling, FloorJson.Published.ToldEvents);
        if (told.Events.IsDefaultOrEmpty || told.Events.Length > ToldEvents.Most)
        {
            throw new RefusedException(StatusCodes.Status400BadRequest, $"Tell at least one event, and at most {ToldEvents.Most} at once.");
        }

        // Once events are being written, they are written: that nobody waits for the answer any more does not leave half of them out.
        var answers = await desk.TellAsync(Job(context), told, CancellationToken.None);
        foreach (var refused in answers.Answers.Where(answer => answer.Refusal is not null))
        {
            log.Write(context, StatusCodes.Status200OK, $"event {refused.Id}: {refused.Refusal}");
        }

        await Bodies.AnswerAsync(context, answers, FloorJson.Published.EventAnswers);
    }
}
