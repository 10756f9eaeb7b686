import { execFile } from 'node:child_process';
import * as path from 'node:path';
import { promisify } from 'node:util';
import * as vscode from 'vscode';
import { program } from './program';

const run = promisify(execFile);

/** Has the program write a file to start from, and opens it. */
export async function newFile(kind: 'machine' | 'procedure'): Promise<void> {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder === undefined) {
    void vscode.window.showInformationMessage('Open the folder of your library first.');
    return;
  }
  const name = await vscode.window.showInputBox({
    prompt: `The name of the ${kind}: letters, digits and underscores`,
    placeHolder: kind === 'machine' ? 'harrow_h2' : 'change_belt',
    validateInput: (value) => (/^[\p{L}_][\p{L}_0-9]*$/u.test(value) ? undefined : 'Letters, digits and underscores, a letter first.'),
  });
  if (name === undefined) {
    return;
  }
  try {
    await run(program(), ['new', kind, name], { cwd: folder.uri.fsPath });
  } catch (error) {
    const said = (error as { stderr?: string }).stderr?.trim();
    void vscode.window.showErrorMessage(said !== undefined && said !== '' ? said : String(error));
    return;
  }
  const document = await vscode.workspace.openTextDocument(path.join(folder.uri.fsPath, `${name}.proc`));
  await vscode.window.showTextDocument(document);
}
