using ProcScript.Floor.Desk;
using ProcScript.Floor.Doors;

namespace ProcScript.Floor.Endpoints;

/// <summary>The pictures of the cards, made safe as in a pack.</summary>
/// <param name="desk">The jobs.</param>
internal sealed class FigureEndpoint(JobDesk desk)
{
    /// <summary>Says where they are reached.</summary>
    public void Map(IEndpointRouteBuilder routes) => routes.MapGet("/api/jobs/{job}/figures/{hash}", ShowAsync);

    private async Task ShowAsync(HttpContext context)
    {
        var figure = await desk.FigureAsync(JobEndpoints.Job(context), (string)context.Request.RouteValues["hash"]!, context.RequestAborted)
            ?? throw new RefusedException(StatusCodes.Status404NotFound, "There is no such picture.");
        context.Response.ContentType = figure.Type;
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        await context.Response.Body.WriteAsync(figure.Content.AsMemory(), context.RequestAborted);
    }
}
