using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Checking;

/// <summary>Answers a client that asks for findings.</summary>
internal static class DiagnosticMethods
{
    private const string Full = "full";
    private const string Unchanged = "unchanged";

    /// <summary>Adds the methods where the client asks.</summary>
    public static void Add(MethodTable methods, Workspace workspace, DiagnosticWriter writer)
    {
        methods.Request<DocumentDiagnosticParams, DocumentDiagnosticReport>("textDocument/diagnostic", async (parameters, cancellation) =>
        {
            if (workspace.Find(parameters.TextDocument.Uri) is not var (library, path))
            {
                return new DocumentDiagnosticReport(Full, "") { Items = [] };
            }

            var analysis = await library.AnalyseAsync(cancellation).ConfigureAwait(false);
            var items = writer.Write(analysis).GetValueOrDefault(path, []);
            var digest = DiagnosticDigest.Of(items);
            return digest == parameters.PreviousResultId
                ? new DocumentDiagnosticReport(Unchanged, digest)
                : new DocumentDiagnosticReport(Full, digest) { Items = items };
        });
        methods.Request<WorkspaceDiagnosticParams, WorkspaceDiagnosticReport>("workspace/diagnostic", async (parameters, cancellation) =>
        {
            var runs = workspace.Libraries.Select(library => library.AnalyseAsync(cancellation)).ToList();
            var known = parameters.PreviousResultIds.ToImmutableDictionary(previous => previous.Uri, previous => previous.Value);
            var items = ImmutableArray.CreateBuilder<WorkspaceDocumentDiagnosticReport>();
            foreach (var analysis in await Task.WhenAll(runs).ConfigureAwait(false))
            {
                items.AddRange(Reports(analysis, known, writer));
            }

            return new WorkspaceDiagnosticReport(items.ToImmutable());
        });
    }

    private static IEnumerable<WorkspaceDocumentDiagnosticReport> Reports(
        LibraryAnalysis analysis, ImmutableDictionary<string, string> known, DiagnosticWriter writer)
    {
        var found = writer.Write(analysis);
        foreach (var path in analysis.Library.Trees.Keys.Concat(analysis.Report.OtherTexts.Keys))
        {
            var (uri, items) = (analysis.Files.UriOf(path), found.GetValueOrDefault(path, []));
            var (version, digest) = (analysis.Files.Open.GetValueOrDefault(path)?.Version, DiagnosticDigest.Of(items));
            if (known.GetValueOrDefault(uri) == digest)
            {
                yield return new WorkspaceDocumentDiagnosticReport(Unchanged, uri, version, digest);
            }
            else if (!items.IsEmpty || known.ContainsKey(uri))
            {
                yield return new WorkspaceDocumentDiagnosticReport(Full, uri, version, digest) { Items = items };
            }
        }
    }
}
