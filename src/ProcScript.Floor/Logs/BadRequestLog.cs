namespace ProcScript.Floor.Logs;

/// <summary>Takes from the web server's own log what it has refused before anybody else saw it: headers that are no headers, or that came too slowly.</summary>
/// <param name="log">Where refusals are written down.</param>
internal sealed class BadRequestLog(RefusalLog log) : ILoggerProvider, ILogger
{
    /// <summary>What the web server calls that part of its log.</summary>
    public const string Category = "Microsoft.AspNetCore.Server.Kestrel.BadRequests";

    /// <inheritdoc/>
    public ILogger CreateLogger(string categoryName) => categoryName == Category ? this : Microsoft.Extensions.Logging.Abstractions.NullLogger.Instance;

    /// <inheritdoc/>
    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    /// <inheritdoc/>
    public bool IsEnabled(LogLevel logLevel) => true;

    /// <inheritdoc/>
    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        log.Write(formatter(state, exception));

    /// <inheritdoc/>
    public void Dispose()
    {
        // It holds nothing open.
    }
}
