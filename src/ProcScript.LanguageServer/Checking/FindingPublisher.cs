using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Checking;

/// <summary>Tells a client that does not ask: of each document what changed, and of an open one that its new text was checked.</summary>
/// <param name="connection">The line to the client.</param>
/// <param name="writer">Writes the diagnostics.</param>
/// <param name="refreshes">Tells the client when to ask again.</param>
/// <param name="isAsked">Whether the client asks for findings, and so is told none.</param>
internal sealed class FindingPublisher(Connection connection, DiagnosticWriter writer, RefreshRequests refreshes, bool isAsked) : IAnalysisListener
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, (int? Version, string Digest)> _told = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public void Analysed(LibraryAnalysis analysis)
    {
        if (!isAsked)
        {
            Publish(analysis);
        }

        refreshes.Analysed(analysis);
    }

    /// <inheritdoc/>
    public void Failed(Exception fault) => connection.Notify("window/showMessage", new LogMessageParams(
        LogMessageParams.Error, $"procscript could not check the library: {fault.GetType().Name}: {fault.Message} This is a fault of procscript, please report it."));

    private void Publish(LibraryAnalysis analysis)
    {
        var found = writer.Write(analysis).ToImmutableDictionary(file => analysis.Files.UriOf(file.Key), file => file.Value, StringComparer.Ordinal);
        var versions = analysis.Files.Open.Values.ToImmutableDictionary(document => document.Uri, document => document.Version, StringComparer.Ordinal);
        lock (_lock)
        {
            var mine = _told.Keys.Where(uri => !found.ContainsKey(uri) && !versions.ContainsKey(uri) && IsIn(analysis, uri));
            foreach (var uri in found.Keys.Concat(versions.Keys).Concat([.. mine]).Distinct().Order(StringComparer.Ordinal))
            {
                Tell(uri, versions.TryGetValue(uri, out var version) ? version : null, found.GetValueOrDefault(uri, []));
            }
        }
    }

    private static bool IsIn(LibraryAnalysis analysis, string uri) =>
        DocumentUri.ToPath(uri) is { } path && analysis.Files.Root.Length > 0 && FolderPaths.Holds(analysis.Files.Root, path);

    private void Tell(string uri, int? version, ImmutableArray<Diagnostic> diagnostics)
    {
        var digest = DiagnosticDigest.Of(diagnostics);
        if (_told.GetValueOrDefault(uri) is var told && told.Version == version && (told.Digest ?? DiagnosticDigest.Of([])) == digest)
        {
            return;
        }

        _told[uri] = (version, digest);
        connection.Notify("textDocument/publishDiagnostics", new PublishDiagnosticsParams(uri, diagnostics) { Version = version });
    }
}
