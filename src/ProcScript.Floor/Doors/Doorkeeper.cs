using System.Text.Json;
using ProcScript.Floor.Answers;
using ProcScript.Floor.Logs;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Doors;

/// <summary>
/// Stands before everything that the server does: whoever calls it by a foreign name, from a foreign page or without being paired is sent away, told
/// why, and written down.
/// </summary>
/// <param name="hosts">The names of the server.</param>
/// <param name="tokens">Tells paired tablets; null where nobody is asked.</param>
/// <param name="cookie">The name of the cookie with the token.</param>
/// <param name="log">Where it is written down.</param>
internal sealed class Doorkeeper(HostNames hosts, SessionTokens? tokens, string cookie, RefusalLog log)
{
    private const string Api = "/api";
    private const string PairPath = "/api/pair";
    private const string MePath = "/api/me";

    /// <summary>The name of the item of a request that says whose it is.</summary>
    public const string Who = "floor.who";

    /// <summary>Lets a request through, or answers it.</summary>
    public async Task PassAsync(HttpContext context, RequestDelegate next)
    {
        SecurityHeaders.Put(context.Response);
        try
        {
            Look(context);
            await next(context);
            if (context.Response is { HasStarted: false, StatusCode: StatusCodes.Status404NotFound or StatusCodes.Status405MethodNotAllowed })
            {
                throw new RefusedException(context.Response.StatusCode, $"There is nothing at {context.Request.Path} that can be asked with {context.Request.Method}.");
            }
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Whoever asked has gone.
        }
        catch (Exception failure) when (Status(failure) is { } status)
        {
            log.Write(context, status, failure.Message);
            await Problem.WriteAsync(context, status, failure.Message);
        }
    }

    private static int? Status(Exception failure) => failure switch
    {
        RefusedException refused => refused.Status,
        BadHttpRequestException bad => bad.StatusCode,
        JsonException => StatusCodes.Status400BadRequest,
        JobStoreException => StatusCodes.Status503ServiceUnavailable,
        _ => null,
    };

    private void Look(HttpContext context)
    {
        var request = context.Request;
        if (!hosts.Has(request.Host))
        {
            throw new RefusedException(StatusCodes.Status421MisdirectedRequest, $"This server is not called '{request.Host.Host}'. If it is to be, start it with --name.");
        }

        if (!request.Path.StartsWithSegments(Api, StringComparison.Ordinal))
        {
            return;
        }

        context.Response.Headers.CacheControl = "no-store";
        ComesFromOurPage(request);
        context.Items[Who] = tokens is null ? "this machine" : tokens.Who(request.Cookies[cookie]);
        if (context.Items[Who] is null && request.Path != PairPath && request.Path != MePath)
        {
            throw new RefusedException(StatusCodes.Status401Unauthorized, "This tablet is not paired. Enter the code that the server has printed.");
        }
    }

    /// <summary>A browser says from where a request comes; what is no browser sends no cookie that it was not given.</summary>
    private static void ComesFromOurPage(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var changes = !HttpMethods.IsGet(request.Method) && !HttpMethods.IsHead(request.Method);
        if (site is not ("" or "same-origin" or "none"))
        {
            throw new RefusedException(StatusCodes.Status403Forbidden, "That comes from a page of another site.");
        }

        var origin = request.Headers.Origin.ToString();
        if (changes && origin.Length > 0 && !string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase))
        {
            throw new RefusedException(StatusCodes.Status403Forbidden, "That comes from a page of another site.");
        }
    }
}
