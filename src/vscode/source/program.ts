import * as vscode from 'vscode';

/** The command line program: as the settings name it, or the one on the search path. */
export function program(): string {
  const path = vscode.workspace.getConfiguration('procscript').get<string>('path', '').trim();
  return path === '' ? 'procscript' : path;
}
