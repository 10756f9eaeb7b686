using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Features;

/// <summary>A name and its uses, which an editor changes as one while somebody types.</summary>
internal static class LinkedEditingMethods
{
    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace) =>
        methods.Request<TextDocumentPositionParams, LinkedEditingRanges?>("textDocument/linkedEditingRange", (parameters, cancellation) =>
            workspace.AskTextAsync(parameters.TextDocument, (asked, _) => Task.FromResult(Linked(asked, parameters.Position)), cancellation));

    /// <summary>All places of a name; null where another file has some too, for those would be left behind: that takes a rename.</summary>
    private static LinkedEditingRanges? Linked(Asked asked, Position position)
    {
        if (asked.Analysis.Names.At(asked.Path, asked.OffsetOf(position)) is not var (_, thing))
        {
            return null;
        }

        var uses = asked.Analysis.Names.Uses(thing).ToList();
        return uses.Count > 1 && uses.TrueForAll(found => found.Path == asked.Path)
            ? new LinkedEditingRanges([.. uses.Select(found => asked.Places.RangeOf(found.Use.Span))], "[A-Za-z_][A-Za-z0-9_]*")
            : null;
    }
}
