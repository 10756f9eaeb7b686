import * as vscode from 'vscode';
import { Browser } from './browser';
import { CardPreview } from './cardPreview';
import { CheckTracker } from './checkTracker';
import { newFile, showWritten } from './newFile';
import { PlanWatcher } from './planWatcher';
import { foundIn } from './program';
import { RecordKeeper } from './records';
import { RefitTree } from './refitTree';
import { ServerConnection, type ViewArguments } from './serverConnection';
import { StatusItem } from './statusItem';
import { TaskProvider } from './tasks';
import { openInBrowser, viewCommands } from './views';

/** Called by the editor when a folder with texts of the language is opened, or such a text, or when one of the commands is used. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  foundIn(context);
  const output = vscode.window.createOutputChannel('ProcScript', { log: true });
  const tracker = new CheckTracker();
  const connection = new ServerConnection(tracker, output);
  const watcher = new PlanWatcher(connection);
  const preview = new CardPreview(watcher, new RecordKeeper(context.workspaceState));
  const browser = new Browser();
  const tasks = new TaskProvider(connection, browser);
  context.subscriptions.push(
    output,
    connection,
    watcher,
    preview,
    browser,
    tasks,
    new RefitTree(watcher),
    new StatusItem(connection, tracker),
    vscode.tasks.registerTaskProvider('procscript', tasks),
    vscode.commands.registerCommand('procscript.restart', () => connection.start()),
    vscode.commands.registerCommand('procscript.showCards', () => preview.open()),
    vscode.commands.registerCommand('procscript.openInBrowser', (wanted?: ViewArguments) => openInBrowser(connection, browser, wanted)),
    vscode.commands.registerCommand('procscript.showOutput', () => output.show()),
    vscode.commands.registerCommand('procscript.newMachine', () => newFile(context, 'machine')),
    vscode.commands.registerCommand('procscript.newProcedure', () => newFile(context, 'procedure')),
    vscode.commands.registerCommand('procscript.check', () => tasks.run('check')),
    vscode.commands.registerCommand('procscript.build', () => tasks.run('build')),
    ...viewCommands(watcher, preview, connection),
    ...followTexts(connection, tracker),
    vscode.workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration('procscript.path')) {
        void connection.start();
      }
    }),
  );
  // From now on there is something to show in the views.
  await vscode.commands.executeCommand('setContext', 'procscript.active', true);
  await Promise.all([connection.start(), showWritten(context)]);
}

/** Tells the tracker which texts are shown. Of others the editor may never ask, so nobody waits for them. */
function followTexts(connection: ServerConnection, tracker: CheckTracker): vscode.Disposable[] {
  return [
    vscode.window.onDidChangeVisibleTextEditors((editors) => {
      const shown = new Set(editors.map((editor) => editor.document));
      for (const document of vscode.workspace.textDocuments) {
        if (!shown.has(document)) {
          tracker.hidden(document.uri.toString());
        }
      }
      connection.expectVisible();
    }),
    vscode.workspace.onDidChangeTextDocument(() => connection.expectVisible()),
    vscode.workspace.onDidCloseTextDocument((document) => tracker.closed(document.uri.toString())),
  ];
}
