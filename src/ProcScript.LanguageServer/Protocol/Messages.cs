namespace ProcScript.LanguageServer.Protocol;

/// <summary>The client is ready.</summary>
internal sealed record InitializedParams;

/// <summary>A line for the client's log.</summary>
internal sealed record LogMessageParams(int Type, string Message)
{
    /// <summary>Something went wrong.</summary>
    public const int Error = 1;

    /// <summary>Something may be wrong.</summary>
    public const int Warning = 2;

    /// <summary>What somebody may want to know who looks.</summary>
    public const int Info = 3;
}
