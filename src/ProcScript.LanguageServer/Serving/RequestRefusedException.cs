namespace ProcScript.LanguageServer.Serving;

/// <summary>A request that is well formed and cannot be granted; the message says why.</summary>
/// <param name="message">Why.</param>
internal sealed class RequestRefusedException(string message) : Exception(message)
{
    /// <summary>The protocol's RequestFailed.</summary>
    public const int Code = -32803;
}
