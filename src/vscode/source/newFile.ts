import { execFile } from 'node:child_process';
import * as path from 'node:path';
import { promisify } from 'node:util';
import * as vscode from 'vscode';
import { chosen, program } from './program';
import { notStarted } from './programChoice';
import { offerHelp } from './programHelp';

const run = promisify(execFile);

/** The file to show once the folder that it was written in is open: opening a folder starts the extension anew. */
const toShow = 'procscript.toShow';

/** What is asked for a new file, in one question. */
const questions = {
  machine: { prompt: 'What is the machine called?', placeHolder: 'Harrow H2' },
  procedure: { prompt: 'What is the job?', placeHolder: 'Change the belt' },
} as const;

/** Has the program write a file to start from, with the settings beside it where the library has none yet, and opens it. */
export async function newFile(context: vscode.ExtensionContext, kind: keyof typeof questions): Promise<void> {
  const open = await openFolder();
  const folder = open ?? (await chooseFolder());
  if (folder === undefined) {
    return;
  }
  const name = await vscode.window.showInputBox({
    ...questions[kind],
    ignoreFocusOut: true,
    validateInput: (value) => (/[\p{L}\p{N}]/u.test(value) && !/[/\\]/.test(value) ? undefined : 'A few words, without slashes.'),
  });
  if (name === undefined) {
    return;
  }
  const written = await write(folder.fsPath, kind, name);
  if (written === undefined) {
    return;
  }
  if (open === undefined) {
    await context.globalState.update(toShow, written);
    await vscode.commands.executeCommand('vscode.openFolder', folder);
    return;
  }
  await show(written);
}

/** Shows the file that was written before its folder was opened. */
export async function showWritten(context: vscode.ExtensionContext): Promise<void> {
  const file = context.globalState.get<string>(toShow);
  if (file !== undefined && vscode.workspace.getWorkspaceFolder(vscode.Uri.file(file)) !== undefined) {
    await context.globalState.update(toShow, undefined);
    await show(file);
  }
}

/** Opens a file with the cursor behind it, where one goes on. */
async function show(file: string): Promise<void> {
  const document = await vscode.workspace.openTextDocument(file);
  const end = document.lineAt(document.lineCount - 1).range.end;
  await vscode.window.showTextDocument(document, { selection: new vscode.Range(end, end) });
}

/** The path of the file that was written; undefined where none was, which has been told then. */
async function write(folder: string, kind: string, name: string): Promise<string | undefined> {
  try {
    const { stdout } = await run(program(), ['new', kind, name], { cwd: folder });
    const [, file] = /^wrote (.+)$/m.exec(stdout) ?? [];
    return file === undefined ? undefined : path.join(folder, file);
  } catch (error) {
    const { stderr, code } = error as { stderr?: string; code?: unknown };
    if (typeof code === 'number') {
      void vscode.window.showErrorMessage((stderr ?? '').trim().replace(/^procscript: /, ''));
    } else {
      // It did not run at all.
      void offerHelp(notStarted(chosen()));
    }
    return undefined;
  }
}

/** The folder that is open; of several the one that is chosen. */
async function openFolder(): Promise<vscode.Uri | undefined> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  return folders.length > 1 ? (await vscode.window.showWorkspaceFolderPick())?.uri : folders[0]?.uri;
}

async function chooseFolder(): Promise<vscode.Uri | undefined> {
  if ((vscode.workspace.workspaceFolders ?? []).length > 0) {
    return undefined;
  }
  const [folder] = (await vscode.window.showOpenDialog({
    title: 'The folder for your library',
    openLabel: 'Use This Folder',
    canSelectFiles: false,
    canSelectFolders: true,
  })) ?? [undefined];
  return folder;
}
