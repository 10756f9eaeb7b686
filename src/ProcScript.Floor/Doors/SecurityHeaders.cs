using Microsoft.Extensions.Primitives;

namespace ProcScript.Floor.Doors;

/// <summary>What every answer forbids the browser.</summary>
internal static class SecurityHeaders
{
    /// <summary>What the page may load: what this server gives out, and photos that the tablet itself has taken.</summary>
    public const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; "
        + "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private static readonly (string Name, StringValues Value)[] All =
    [
        ("Content-Security-Policy", ContentPolicy),
        ("X-Content-Type-Options", "nosniff"),
        ("X-Frame-Options", "DENY"),
        ("Referrer-Policy", "no-referrer"),
        ("Cross-Origin-Opener-Policy", "same-origin"),
        ("Cross-Origin-Resource-Policy", "same-origin"),
        ("Permissions-Policy", "camera=(self), microphone=(), geolocation=(), usb=(), serial=(), bluetooth=()"),
    ];

    /// <summary>Puts them on an answer.</summary>
    public static void Put(HttpResponse response)
    {
        foreach (var (name, value) in All)
        {
            response.Headers[name] = value;
        }
    }
}
