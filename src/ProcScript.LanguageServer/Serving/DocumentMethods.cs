using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Serving;

/// <summary>What the client tells of its documents, folders and files.</summary>
internal static class DocumentMethods
{
    /// <summary>Adds the methods.</summary>
    public static void Add(MethodTable methods, Connection connection, ClientProfile client, Workspace workspace)
    {
        methods.Notification<InitializedParams>("initialized", _ =>
        {
            if (client.WatchesFiles)
            {
                connection.Ask("client/registerCapability", new RegistrationParams(
                    [new Registration("sources", "workspace/didChangeWatchedFiles", new DidChangeWatchedFilesRegistrationOptions([new Protocol.FileSystemWatcher("**/*.proc"), new Protocol.FileSystemWatcher("**/*.json"), new Protocol.FileSystemWatcher("**/*.{svg,png,jpg,jpeg,webp}")]))]));
            }
        });
        methods.Notification<DidOpenTextDocumentParams>("textDocument/didOpen", parameters => workspace.Open(parameters.TextDocument));
        methods.Notification<DidChangeTextDocumentParams>("textDocument/didChange", parameters =>
        {
            if (!workspace.Change(parameters.TextDocument, parameters.ContentChanges))
            {
                connection.Notify("window/logMessage", new LogMessageParams(LogMessageParams.Warning, $"{parameters.TextDocument.Uri} changed and is not open."));
            }
        });
        methods.Notification<DidCloseTextDocumentParams>("textDocument/didClose", parameters => workspace.Close(parameters.TextDocument.Uri));
        methods.Notification<DidChangeWatchedFilesParams>("workspace/didChangeWatchedFiles", parameters => workspace.Changed(parameters.Changes.Select(change => change.Uri)));
        methods.Notification<RenameFilesParams>("workspace/didRenameFiles", parameters => workspace.Changed(parameters.Files.SelectMany(file => new[] { file.OldUri, file.NewUri })));
        methods.Notification<CreateFilesParams>("workspace/didCreateFiles", parameters => workspace.Changed(parameters.Files.Select(file => file.Uri)));
        methods.Notification<DeleteFilesParams>("workspace/didDeleteFiles", parameters => workspace.Changed(parameters.Files.Select(file => file.Uri)));
        methods.Notification<DidChangeWorkspaceFoldersParams>("workspace/didChangeWorkspaceFolders", parameters =>
        {
            workspace.RemoveFolders(Paths(parameters.Event.Removed));
            workspace.AddFolders(Paths(parameters.Event.Added));
        });
    }

    private static IEnumerable<string> Paths(IEnumerable<WorkspaceFolder> folders) =>
        folders.Select(folder => DocumentUri.ToPath(folder.Uri)).OfType<string>();
}
