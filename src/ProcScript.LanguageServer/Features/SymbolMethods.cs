using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Features;

/// <summary>The outline of a document, and a search for names in all of them.</summary>
internal static class SymbolMethods
{
    private const int MostFound = 500;

    /// <summary>Adds the methods.</summary>
    public static void Add(MethodTable methods, Workspace workspace, ClientProfile client)
    {
        if (client.TakesNestedSymbols)
        {
            methods.Request<DocumentParams, ImmutableArray<DocumentSymbol>>("textDocument/documentSymbol", async (parameters, cancellation) =>
                await workspace.ReadAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } written
                    ? Outline(written.Tree.Root.Declarations, written.Places)
                    : []);
        }
        else
        {
            methods.Request<DocumentParams, ImmutableArray<SymbolInformation>>("textDocument/documentSymbol", async (parameters, cancellation) =>
                await workspace.ReadAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } written
                    ? [.. Flat(Outline(written.Tree.Root.Declarations, written.Places), written.Uri, "")]
                    : []);
        }

        methods.Request<WorkspaceSymbolParams, ImmutableArray<SymbolInformation>>("workspace/symbol", async (parameters, cancellation) =>
        {
            var runs = workspace.Libraries.Select(library => library.AnalyseAsync(cancellation)).ToList();
            var analyses = await Task.WhenAll(runs).ConfigureAwait(false);
            return [.. analyses.SelectMany(analysis => Find(analysis, parameters.Query)).Take(MostFound)];
        });
    }

    private static ImmutableArray<DocumentSymbol> Outline(IEnumerable<SyntaxNode> nodes, TextPlaces places)
    {
        var symbols = ImmutableArray.CreateBuilder<DocumentSymbol>();
        foreach (var node in nodes)
        {
            if (OutlineEntry.Of(node) is not { } entry)
            {
                // What stands under a `when` or an `each` is listed where the block stands.
                symbols.AddRange(node is WhenSyntax or EachSyntax ? Outline(node.Children, places) : []);
            }
            else if (entry.Name.Length > 0)
            {
                symbols.Add(new DocumentSymbol(
                    entry.Name, entry.Detail, entry.Kind, places.RangeOf(node.Span), places.RangeOf(entry.NamePlace), Outline(entry.Inside, places)));
            }
        }

        return symbols.ToImmutable();
    }

    /// <summary>The outline for a client that knows no symbols within symbols: each says what it lies in.</summary>
    private static IEnumerable<SymbolInformation> Flat(ImmutableArray<DocumentSymbol> symbols, string uri, string around) => symbols.SelectMany(symbol =>
        Flat(symbol.Children, uri, symbol.Name).Prepend(new SymbolInformation(symbol.Name, symbol.Kind, new Location(uri, symbol.Range), around)));

    private static IEnumerable<SymbolInformation> Find(LibraryAnalysis analysis, string query) =>
        from tree in analysis.Library.Trees
        let places = new TextPlaces(tree.Value.Text, analysis.Encoding)
        from declaration in tree.Value.Root.Declarations
        from node in declaration.DescendantsAndSelf()
        let entry = node is StageSyntax or WorkSyntax or RefitSyntax or TestRuleSyntax ? null : OutlineEntry.Of(node)
        where entry is { Name.Length: > 0 } && (Fits(entry.Name, query) || entry.Detail.Contains(query, StringComparison.OrdinalIgnoreCase))
        select new SymbolInformation(
            entry.Name,
            entry.Kind,
            new Location(analysis.Files.UriOf(tree.Key), places.RangeOf(entry.NamePlace)),
            ReferenceEquals(node, declaration) ? tree.Key : declaration.Name.Text);

    /// <summary>Whether a name has the letters of a query in their order; clients sort what they get.</summary>
    private static bool Fits(string text, string query)
    {
        var at = 0;
        foreach (var letter in text)
        {
            at += at < query.Length && char.ToUpperInvariant(letter) == char.ToUpperInvariant(query[at]) ? 1 : 0;
        }

        return at == query.Length;
    }
}
