using ProcScript.Floor.Answers;
using ProcScript.Floor.Documents;
using ProcScript.Floor.Doors;

namespace ProcScript.Floor.Endpoints;

/// <summary>Pairs a tablet.</summary>
/// <param name="pairing">Holds the code.</param>
/// <param name="tokens">Makes tokens; null where nobody is asked for one.</param>
/// <param name="cookie">The name of the cookie with the token.</param>
/// <param name="clock">The clock.</param>
internal sealed class PairEndpoints(PairingDesk pairing, SessionTokens? tokens, string cookie, TimeProvider clock)
{
    private const int LongestRequest = 200;

    /// <summary>Says where it is reached.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/me", MeAsync);
        routes.MapPost("/api/pair", PairAsync);
    }

    private Task MeAsync(HttpContext context) => Bodies.AnswerAsync(context, new Me(context.Items[Doorkeeper.Who] is not null, clock.GetUtcNow()), FloorJson.Published.Me);

    private async Task PairAsync(HttpContext context)
    {
        var request = await Bodies.ReadJsonAsync(context, LongestRequest, FloorJson.Published.PairRequest);
        if (tokens is not null)
        {
            pairing.Try($"{context.Connection.RemoteIpAddress}", request.Code);
            context.Response.Cookies.Append(cookie, tokens.Make(), new CookieOptions
            {
                HttpOnly = true,
                IsEssential = true,
                MaxAge = SessionTokens.Life,
                Path = "/",
                SameSite = SameSiteMode.Strict,
                Secure = context.Request.IsHttps,
            });
        }

        await Bodies.AnswerAsync(context, new Me(Paired: true, clock.GetUtcNow()), FloorJson.Published.Me);
    }
}
