import { existsSync } from 'node:fs';
import * as path from 'node:path';
import * as vscode from 'vscode';
import { chosenProgram, type Program } from './programChoice';

let extension: vscode.ExtensionContext | undefined;

/** Says where the extension lies: a package for one platform has the program in it. */
export function foundIn(context: vscode.ExtensionContext): void {
  extension = context;
}

/** The command line program, and where it comes from. */
export function chosen(): Program {
  const setting = vscode.workspace.getConfiguration('procscript').get<string>('path', '');
  const bundled = path.join(extension?.extensionPath ?? '', 'bin', process.platform === 'win32' ? 'procscript.exe' : 'procscript');
  return chosenProgram(setting, extension !== undefined && existsSync(bundled) ? bundled : undefined);
}

/** How the command line program is called. */
export function program(): string {
  return chosen().command;
}

/** The version of the extension; that of the program is the same where both come from one build. */
export function extensionVersion(): string {
  return (extension?.extension.packageJSON as { version?: string } | undefined)?.version ?? '';
}
