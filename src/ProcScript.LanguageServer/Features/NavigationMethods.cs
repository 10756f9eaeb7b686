using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>Leads from a word to what it means, and to the others that mean the same.</summary>
internal static class NavigationMethods
{
    private const int Read = 2;
    private const int Write = 3;

    /// <summary>Adds the methods.</summary>
    public static void Add(MethodTable methods, Workspace workspace)
    {
        methods.Request<TextDocumentPositionParams, ImmutableArray<Location>>("textDocument/definition", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
                ? Definitions(asked, asked.OffsetOf(parameters.Position))
                : []);
        methods.Request<ReferenceParams, ImmutableArray<Location>>("textDocument/references", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
                ? References(asked, asked.OffsetOf(parameters.Position), parameters.Context.IncludeDeclaration)
                : []);
        methods.Request<TextDocumentPositionParams, ImmutableArray<DocumentHighlight>>("textDocument/documentHighlight", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
                ? Highlights(asked, asked.OffsetOf(parameters.Position))
                : []);
        methods.Request<DocumentParams, ImmutableArray<DocumentLink>>("textDocument/documentLink", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked ? Links(asked) : []);
    }

    private static ImmutableArray<Location> Definitions(Asked asked, int offset)
    {
        if (asked.Tree.Root.Uses.FirstOrDefault(use => use.Path.Span.Touches(offset)) is { } line)
        {
            return Target(asked, line.Path.Value) is { } file ? [asked.Analysis.LocationOf(new SourceSpan(file, default))] : [];
        }

        return asked.Analysis.Names.At(asked.Path, offset) is var (_, thing)
            ? [.. asked.Analysis.Names.Declarations(thing).Select(asked.Analysis.LocationOf)]
            : [];
    }

    private static ImmutableArray<Location> References(Asked asked, int offset, bool withDeclarations) =>
        asked.Analysis.Names.At(asked.Path, offset) is var (_, thing)
            ? [.. asked.Analysis.Names.Uses(thing)
                .Where(found => withDeclarations || !found.Use.IsDeclaration)
                .Select(found => asked.Analysis.LocationOf(new SourceSpan(found.Path, found.Use.Span)))]
            : [];

    private static ImmutableArray<DocumentHighlight> Highlights(Asked asked, int offset)
    {
        var names = asked.Analysis.Names;
        return names.At(asked.Path, offset) is not var (_, thing)
            ? []
            : [.. names.In(asked.Path)!.Named(thing.Name)
                .Where(use => names.Meaning(use, asked.Path) == thing)
                .Select(use => new DocumentHighlight(asked.Places.RangeOf(use.Span), use.IsDeclaration ? Write : Read))];
    }

    private static ImmutableArray<DocumentLink> Links(Asked asked) =>
    [
        .. asked.Tree.Root.Uses
            .Select(use => (use.Path.Span, File: Target(asked, use.Path.Value)))
            .Where(link => link.File is not null)
            .Select(link => new DocumentLink(asked.Places.RangeOf(link.Span), asked.Analysis.Files.UriOf(link.File!))),
    ];

    /// <summary>The file that a <c>use</c> line leads to; null where the library has none.</summary>
    private static string? Target(Asked asked, string written) =>
        LibraryPath.Resolve(asked.Path, written) is { } path && asked.Analysis.Library.Trees.ContainsKey(path) ? path : null;
}
