using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Names;
using ProcScript.Syntax.Text;
using SourceEdit = ProcScript.Syntax.Findings.TextEdit;

namespace ProcScript.LanguageServer.Features;

/// <summary>Gives things other names, in every file of the library.</summary>
internal static class RenameMethods
{
    /// <summary>Adds the methods.</summary>
    public static void Add(MethodTable methods, Workspace workspace, EditWriter edits)
    {
        methods.Request<TextDocumentPositionParams, PrepareRenameResult?>("textDocument/prepareRename", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
            && asked.Analysis.Names.At(asked.Path, asked.OffsetOf(parameters.Position)) is var (use, _)
                ? new PrepareRenameResult(asked.Places.RangeOf(use.Span), use.Name)
                : null);
        methods.Request<RenameParams, WorkspaceEdit>("textDocument/rename", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked
            && asked.Analysis.Names.At(asked.Path, asked.OffsetOf(parameters.Position)) is var (_, thing)
                ? edits.Write(asked.Analysis, Rename(asked.Analysis, thing, parameters.NewName))
                : throw new RequestRefusedException("There is no name here that could be changed."));
    }

    private static IEnumerable<SourceEdit> Rename(LibraryAnalysis analysis, NamedThing thing, string name)
    {
        if (name == thing.Name)
        {
            return [];
        }

        if (!NameText.IsName(name))
        {
            throw new RequestRefusedException($"'{name}' cannot be a name: a name begins with a letter or _, goes on with letters, digits and _, and is no reserved word.");
        }

        if (analysis.Names.Clash(thing, name) is { } clash)
        {
            var (line, _) = analysis.Library.Trees[clash.Path].Text.PositionAt(clash.Span.Start);
            throw new RequestRefusedException($"'{name}' is taken: {clash.Path}, line {line + 1}, declares it.");
        }

        return analysis.Names.Uses(thing).Select(found => new SourceEdit(new SourceSpan(found.Path, found.Use.Span), name)).ToImmutableArray();
    }
}
