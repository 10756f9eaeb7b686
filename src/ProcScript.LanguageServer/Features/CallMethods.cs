using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Features;

/// <summary>Procedures that call each other with <c>do</c>.</summary>
internal static class CallMethods
{
    private const int Function = 12;

    /// <summary>Adds the methods.</summary>
    public static void Add(MethodTable methods, Workspace workspace)
    {
        methods.Request<TextDocumentPositionParams, ImmutableArray<CallHierarchyItem>?>("textDocument/prepareCallHierarchy", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
            && ProcedureAt(asked, asked.OffsetOf(parameters.Position)) is var (path, procedure)
                ? [Item(asked.Analysis, path, procedure)]
                : null);
        methods.Request<CallHierarchyCallsParams, ImmutableArray<CallHierarchyIncomingCall>>("callHierarchy/incomingCalls", async (parameters, cancellation) =>
            await AskAsync(workspace, parameters.Item, cancellation).ConfigureAwait(false) is { } asked ? [.. Incoming(asked, parameters.Item)] : []);
        methods.Request<CallHierarchyCallsParams, ImmutableArray<CallHierarchyOutgoingCall>>("callHierarchy/outgoingCalls", async (parameters, cancellation) =>
            await AskAsync(workspace, parameters.Item, cancellation).ConfigureAwait(false) is { } asked ? [.. Outgoing(asked, parameters.Item)] : []);
    }

    private static Task<Asked?> AskAsync(Workspace workspace, CallHierarchyItem item, CancellationToken cancellation) =>
        workspace.AskAsync(new TextDocumentIdentifier(item.Uri), cancellation);

    private static CallHierarchyItem Item(LibraryAnalysis analysis, string path, ProcedureSyntax procedure)
    {
        var places = analysis.PlacesIn(path)!.Value;
        return new CallHierarchyItem(
            procedure.Name.Text, Function, analysis.Files.UriOf(path), places.RangeOf(procedure.Span), places.RangeOf(procedure.Name.Span));
    }

    private static (string Path, ProcedureSyntax Procedure)? ProcedureAt(Asked asked, int offset) =>
        asked.Analysis.Names.At(asked.Path, offset) is var (_, thing) ? Declared(asked, thing) : null;

    /// <summary>The procedure that a name means; null where it means something else.</summary>
    public static (string Path, ProcedureSyntax Procedure)? Declared(Asked asked, NamedThing thing) =>
        thing.Scope == NameScope.Library
        && asked.Analysis.Library.Trees[thing.Path].Root.Declarations.OfType<ProcedureSyntax>().FirstOrDefault(one => one.Name.Text == thing.Name) is { } procedure
            ? (thing.Path, procedure)
            : null;

    private static IEnumerable<CallHierarchyIncomingCall> Incoming(Asked asked, CallHierarchyItem item)
    {
        if (asked.Analysis.Names.At(asked.Path, asked.OffsetOf(item.SelectionRange.Start)) is not var (_, thing))
        {
            return [];
        }

        return
            from found in asked.Analysis.Names.Uses(thing)
            where !found.Use.IsDeclaration
            let caller = asked.Analysis.Library.Trees[found.Path].Root.Declarations.OfType<ProcedureSyntax>().FirstOrDefault(one => one.Span.Touches(found.Use.Span.Start))
            where caller is not null
            group found by (found.Path, Caller: caller) into calls
            let places = asked.Analysis.PlacesIn(calls.Key.Path)!.Value
            select new CallHierarchyIncomingCall(
                Item(asked.Analysis, calls.Key.Path, calls.Key.Caller),
                [.. calls.Select(call => places.RangeOf(call.Use.Span))]);
    }

    private static IEnumerable<CallHierarchyOutgoingCall> Outgoing(Asked asked, CallHierarchyItem item)
    {
        var caller = asked.Tree.Root.Declarations.OfType<ProcedureSyntax>().FirstOrDefault(one => one.Name.Span.Touches(asked.OffsetOf(item.SelectionRange.Start)));
        return
            from call in caller?.DescendantsAndSelf().OfType<DoSyntax>() ?? []
            let target = ProcedureAt(asked, call.Procedure.Span.Start)
            where target is not null
            group call by target.Value into calls
            select new CallHierarchyOutgoingCall(
                Item(asked.Analysis, calls.Key.Path, calls.Key.Procedure),
                [.. calls.Select(call => asked.Places.RangeOf(call.Procedure.Span))]);
    }
}
