import * as vscode from 'vscode';
import type { Browser } from './browser';
import type { CardPreview } from './cardPreview';
import type { PlanWatcher } from './planWatcher';
import type { Page } from './previewPage';
import { headingOf } from './procedureAt';
import type { ServerConnection, ViewArguments } from './serverConnection';

/**
 * The commands of the lenses above a procedure and of what is offered at a step: they show its cards, or only what is asked of them, in the panel,
 * where it follows the text; and the way back from a step.
 */
export function viewCommands(watcher: PlanWatcher, preview: CardPreview, connection: ServerConnection): vscode.Disposable[] {
  return [
    vscode.commands.registerCommand('procscript.view.pack', (wanted: ViewArguments) => showCards(watcher, preview, wanted, 'cards')),
    vscode.commands.registerCommand('procscript.view.refit', (wanted: ViewArguments) => showCards(watcher, preview, wanted, 'refit')),
    vscode.commands.registerCommand('procscript.view.map', (wanted: ViewArguments) => showCards(watcher, preview, wanted, 'map')),
    vscode.commands.registerCommand('procscript.view.back', (wanted: ViewArguments) => showWayBack(connection, wanted)),
    vscode.commands.registerCommand('procscript.showWayBack', () => showWayBack(connection, atCursor())),
  ];
}

/** Shows the shortest way back from the step at the cursor beside the text, as if the work stopped right behind it. */
async function showWayBack(connection: ServerConnection, wanted: ViewArguments | undefined): Promise<void> {
  if (wanted?.position === undefined) {
    void vscode.window.showInformationMessage('Put the cursor at a step first.');
    return;
  }
  try {
    const uri = connection.addressOf(vscode.Uri.parse(wanted.uri));
    const written = await connection.execute('procscript.view.back', { ...wanted, uri, show: false });
    await vscode.commands.executeCommand('markdown.showPreviewToSide', vscode.Uri.parse(written.uri));
  } catch (error) {
    void vscode.window.showErrorMessage(error instanceof Error ? error.message : String(error));
  }
}

/** Opens the cards of a job, or of the procedure at the cursor, where they can be printed and kept: in a browser. */
export async function openInBrowser(connection: ServerConnection, browser: Browser, wanted = atCursor()): Promise<void> {
  if (wanted === undefined) {
    void vscode.window.showInformationMessage('Put the cursor into a procedure first.');
    return;
  }
  try {
    const uri = connection.addressOf(vscode.Uri.parse(wanted.uri));
    const written = await connection.execute('procscript.view.pack', { ...wanted, uri, show: false });
    await browser.open(vscode.Uri.parse(written.uri));
  } catch (error) {
    void vscode.window.showErrorMessage(error instanceof Error ? error.message : String(error));
  }
}

function atCursor(): ViewArguments | undefined {
  const editor = vscode.window.activeTextEditor;
  return editor?.document.languageId === 'procscript'
    ? { uri: editor.document.uri.toString(), position: editor.selection.active }
    : undefined;
}

/** Opens the cards of a job, with the cursor at its procedure, which they follow. */
async function showCards(
  watcher: PlanWatcher,
  preview: CardPreview,
  { uri, job = '', options = [] }: ViewArguments,
  page: Page,
): Promise<void> {
  const document = await vscode.workspace.openTextDocument(vscode.Uri.parse(uri));
  const [name = ''] = job.split('-');
  const heading = headingOf(document.getText().split('\n'), name);
  if (heading !== undefined) {
    const start = new vscode.Position(heading, 0);
    await vscode.window.showTextDocument(document, { viewColumn: vscode.ViewColumn.One, selection: new vscode.Range(start, start) });
    watcher.choose({ document, heading }, { job, options, isProven: true });
  }
  preview.open(page);
}
