using ProcScript.LanguageServer.Serving;

namespace ProcScript.LanguageServer;

/// <summary>The language server: it speaks the Language Server Protocol over two streams until its client leaves.</summary>
public static class EditorServer
{
    /// <summary>Serves one client.</summary>
    /// <param name="input">What the client sends.</param>
    /// <param name="output">What the client reads; nothing else may write to it.</param>
    /// <param name="host">What the program lends.</param>
    /// <param name="stop">Ends the server.</param>
    /// <returns>Whether the client asked for the end before it left, as the protocol wants it.</returns>
    public static async Task<bool> RunAsync(Stream input, Stream output, IServerHost host, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(host);
        using var connection = new Connection(input, output);
        using var session = new Session(connection, host);
        return await session.RunAsync(stop);
    }
}
