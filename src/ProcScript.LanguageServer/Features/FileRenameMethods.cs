using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Text;
using SourceEdit = ProcScript.Syntax.Findings.TextEdit;

namespace ProcScript.LanguageServer.Features;

/// <summary>Before files and folders are renamed: mends the <c>use</c> lines that lead to them and out of them.</summary>
internal static class FileRenameMethods
{
    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace, EditWriter edits) =>
        methods.Request<RenameFilesParams, WorkspaceEdit?>("workspace/willRenameFiles", async (parameters, cancellation) =>
        {
            var libraries = workspace.Libraries.Where(library => library.Files.Root.Length > 0).Select(library => library.AnalyseAsync(cancellation)).ToList();
            foreach (var analysis in await Task.WhenAll(libraries).ConfigureAwait(false))
            {
                var moves = Moves(analysis.Files.Root, parameters.Files);
                if (!moves.IsEmpty)
                {
                    return edits.Write(analysis, Edits(analysis, moves));
                }
            }

            return null;
        });

    /// <summary>The renames inside a library, by path.</summary>
    private static ImmutableArray<(string From, string To)> Moves(string root, ImmutableArray<FileRename> files) =>
    [
        .. from file in files
           let old = DocumentUri.ToPath(file.OldUri)
           let now = DocumentUri.ToPath(file.NewUri)
           where old is not null && now is not null && FolderPaths.Holds(root, old) && FolderPaths.Holds(root, now)
           select (FolderPaths.Inside(root, old), FolderPaths.Inside(root, now)),
    ];

    private static IEnumerable<SourceEdit> Edits(LibraryAnalysis analysis, ImmutableArray<(string From, string To)> moves) =>
        from tree in analysis.Library.Trees
        let place = Moved(tree.Key, moves)
        from use in tree.Value.Root.Uses
        let target = LibraryPath.Resolve(tree.Key, use.Path.Value)
        where target is not null && analysis.Library.Trees.ContainsKey(target)
        let moved = Moved(target, moves)
        where place != tree.Key || moved != target
        let written = LibraryPath.Relative(place, moved)
        where written != use.Path.Value
        select new SourceEdit(new SourceSpan(tree.Key, use.Path.Span), $"\"{written}\"");

    private static string Moved(string path, ImmutableArray<(string From, string To)> moves)
    {
        foreach (var (from, to) in moves)
        {
            if (path == from || path.StartsWith(from + "/", StringComparison.Ordinal))
            {
                return to + path[from.Length..];
            }
        }

        return path;
    }
}
