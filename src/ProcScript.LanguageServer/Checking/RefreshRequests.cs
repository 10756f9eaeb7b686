using System.Collections.Immutable;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax;

namespace ProcScript.LanguageServer.Checking;

/// <summary>
/// Tells a client to ask again about open documents that did not change themselves, while a file that they use did. What changed itself is
/// asked about anyway.
/// </summary>
/// <param name="connection">The line to the client.</param>
/// <param name="writer">Writes the diagnostics.</param>
/// <param name="client">What it asks again for when told to.</param>
internal sealed class RefreshRequests(Connection connection, DiagnosticWriter writer, ClientProfile client)
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, Shown> _shown = new(StringComparer.Ordinal);

    /// <summary>An analysis is done.</summary>
    public void Analysed(LibraryAnalysis analysis)
    {
        if (analysis.Files.Root.Length == 0 || !(client.RefreshesDiagnostics || client.Refreshes.Length > 0))
        {
            return;
        }

        var now = Look(analysis);
        Shown? before;
        lock (_lock)
        {
            before = _shown.GetValueOrDefault(analysis.Files.Root);
            _shown[analysis.Files.Root] = now;
        }

        if (before is null)
        {
            return;
        }

        var still = now.Documents.Where(document => before.Documents.TryGetValue(document.Key, out var known) && IsSame(known.Tree, document.Value.Tree)).ToList();
        if (client.RefreshesDiagnostics && still.Exists(document => document.Value.Digest != before.Documents[document.Key].Digest))
        {
            connection.Ask("workspace/diagnostic/refresh");
        }

        if (still.Exists(document => Uses(analysis, document.Key).Any(path => !IsSame(before.Trees.GetValueOrDefault(path), now.Trees.GetValueOrDefault(path)))))
        {
            foreach (var request in client.Refreshes)
            {
                connection.Ask(request);
            }
        }
    }

    /// <summary>Whether two trees are of the same text: two checks at once may each have read it.</summary>
    private static bool IsSame(SyntaxTree? one, SyntaxTree? other) =>
        ReferenceEquals(one, other) || string.Equals(one?.Text.Content, other?.Text.Content, StringComparison.Ordinal);

    private static IEnumerable<string> Uses(LibraryAnalysis analysis, string path) => analysis.Names.Reach(path).Where(other => other != path);

    private Shown Look(LibraryAnalysis analysis)
    {
        var findings = analysis.Report.Findings
            .Where(reported => analysis.Files.Open.ContainsKey(reported.Finding.Primary.Path))
            .ToLookup(reported => reported.Finding.Primary.Path, StringComparer.Ordinal);
        return new Shown(
            analysis.Library.Trees,
            analysis.Files.Open.Keys.Where(analysis.Library.Trees.ContainsKey).ToImmutableDictionary(
                path => path,
                path => new ShownDocument(
                    analysis.Library.Trees[path],
                    client.RefreshesDiagnostics ? DiagnosticDigest.Of([.. findings[path].Select(reported => writer.Write(reported, analysis))]) : ""),
                StringComparer.Ordinal));
    }

    /// <summary>What the client shows of a library.</summary>
    private sealed record Shown(ImmutableSortedDictionary<string, SyntaxTree> Trees, ImmutableDictionary<string, ShownDocument> Documents);

    /// <summary>What it shows of a document.</summary>
    private sealed record ShownDocument(SyntaxTree Tree, string Digest);
}
