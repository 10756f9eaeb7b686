using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ProcScript.Analysis;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model;

namespace ProcScript.LanguageServer.Checking;

/// <summary>Tells a client that does not ask: of each document what changed, and of an open one that its new text was checked.</summary>
/// <param name="connection">The line to the client.</param>
/// <param name="writer">Writes the diagnostics.</param>
/// <param name="refreshes">Tells the client when to ask again.</param>
/// <param name="isAsked">Whether the client asks for findings, and so is told none.</param>
internal sealed class FindingPublisher(Connection connection, DiagnosticWriter writer, RefreshRequests refreshes, bool isAsked) : IAnalysisListener
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, Told> _told = new(StringComparer.Ordinal);
    private readonly ConditionalWeakTable<LibraryMemory, Library> _libraries = [];

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
        var versions = analysis.Files.Open.Values.ToDictionary(document => document.Uri, document => document.Version, StringComparer.Ordinal);
        lock (_lock)
        {
            var changed = _libraries.TryGetValue(analysis.Files.Memory, out var before) ? TreeChanges.Between(before, analysis.Library) : null;
            _libraries.AddOrUpdate(analysis.Files.Memory, analysis.Library);
            var found = DiagnosticWriter.Told(analysis).ToDictionary(file => analysis.Files.UriOf(file.Path), file => file.Findings, StringComparer.Ordinal);
            var mine = _told.Where(told => told.Value is not { Version: null, Findings.IsEmpty: true } && !found.ContainsKey(told.Key) && !versions.ContainsKey(told.Key) && IsIn(analysis, told.Key));
            foreach (var uri in found.Keys.Concat(versions.Keys).Concat([.. mine.Select(told => told.Key)]).Distinct().Order(StringComparer.Ordinal))
            {
                int? version = versions.TryGetValue(uri, out var open) ? open : null;
                var findings = found.GetValueOrDefault(uri, []);
                if (!_told.TryGetValue(uri, out var told) || told.Version != version || changed is null || !IsAsTold(told.Findings, findings, changed))
                {
                    Tell(uri, version, findings, analysis);
                }
            }
        }
    }

    /// <summary>Whether the same findings lie at the same lines: then nothing needs to be written to see that nothing changed.</summary>
    private static bool IsAsTold(ImmutableArray<ReportedFinding> told, ImmutableArray<ReportedFinding> findings, HashSet<string> changed)
    {
        if (told.Length != findings.Length)
        {
            return false;
        }

        for (var i = 0; i < told.Length; i++)
        {
            var finding = findings[i].Finding;
            if (told[i].Severity != findings[i].Severity
                || (!ReferenceEquals(told[i].Finding, finding) && told[i].Finding != finding)
                || (changed.Count > 0 && (changed.Contains(finding.Primary.Path) || finding.Related.Any(related => changed.Contains(related.Place.Path)))))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsIn(LibraryAnalysis analysis, string uri) =>
        DocumentUri.ToPath(uri) is { } path && analysis.Files.Root.Length > 0 && FolderPaths.Holds(analysis.Files.Root, path);

    private void Tell(string uri, int? version, ImmutableArray<ReportedFinding> findings, LibraryAnalysis analysis)
    {
        var diagnostics = writer.Write(findings, analysis);
        var digest = DiagnosticDigest.Of(diagnostics);
        var isTold = _told.TryGetValue(uri, out var told) ? told.Version == version && told.Digest == digest : version is null && diagnostics.IsEmpty;
        _told[uri] = new Told(version, digest, findings);
        if (!isTold)
        {
            connection.Notify("textDocument/publishDiagnostics", new PublishDiagnosticsParams(uri, diagnostics) { Version = version });
        }
    }

    /// <summary>What a document was told.</summary>
    private readonly record struct Told(int? Version, string Digest, ImmutableArray<ReportedFinding> Findings);
}
