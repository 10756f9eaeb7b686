import * as path from 'node:path';
import * as vscode from 'vscode';
import type { Browser } from './browser';
import { program } from './program';
import type { ServerConnection } from './serverConnection';

/** Where the cards go, if nothing else is said. */
const outputFolder = 'packs';

interface ProcScriptTask extends vscode.TaskDefinition {
  readonly verb: 'check' | 'build';
  readonly path?: string;
  readonly output?: string;
}

/** Offers to check the library and to build its cards, as tasks whose findings land among the problems. */
export class TaskProvider implements vscode.TaskProvider, vscode.Disposable {
  private readonly ended = vscode.tasks.onDidEndTaskProcess(({ execution, exitCode }) => {
    const { definition, scope } = execution.task;
    if (exitCode === 0 && definition.type === 'procscript' && definition.verb === 'build' && typeof scope === 'object') {
      void this.offer(vscode.Uri.joinPath((scope as vscode.WorkspaceFolder).uri, (definition as ProcScriptTask).output ?? outputFolder));
    }
  });

  constructor(
    private readonly connection: ServerConnection,
    private readonly browser: Browser,
  ) {}

  dispose(): void {
    this.ended.dispose();
  }

  provideTasks(): vscode.Task[] {
    return (vscode.workspace.workspaceFolders ?? []).flatMap((folder) => [
      this.task({ type: 'procscript', verb: 'check' }, folder),
      this.task({ type: 'procscript', verb: 'build' }, folder),
    ]);
  }

  resolveTask(given: vscode.Task): vscode.Task | undefined {
    const folder = typeof given.scope === 'object' ? given.scope : vscode.workspace.workspaceFolders?.[0];
    return folder === undefined ? undefined : this.task(given.definition as ProcScriptTask, folder);
  }

  /** Runs one of the offered tasks in the first folder. */
  async run(verb: ProcScriptTask['verb']): Promise<void> {
    const folder = vscode.workspace.workspaceFolders?.[0];
    if (folder === undefined) {
      void vscode.window.showInformationMessage('Open the folder of your library first.');
      return;
    }
    await vscode.tasks.executeTask(this.task({ type: 'procscript', verb }, folder));
  }

  /** The cards that were built are to be looked at and printed: of several those that are chosen. */
  private async offer(folder: vscode.Uri): Promise<void> {
    const found = await vscode.workspace.findFiles(new vscode.RelativePattern(folder, '**/cards.html'), null);
    const button = 'Open in a Browser';
    if (found.length === 0 || (await vscode.window.showInformationMessage('The cards are built.', button)) !== button) {
      return;
    }
    const packs = found.map((page) => ({ label: path.posix.relative(folder.path, path.posix.dirname(page.path)), page }));
    packs.sort((one, other) => one.label.localeCompare(other.label));
    const pack = packs.length === 1 ? packs[0] : await vscode.window.showQuickPick(packs, { placeHolder: 'Which cards?' });
    if (pack !== undefined) {
      await this.browser.open(pack.page);
    }
  }

  private task(definition: ProcScriptTask, folder: vscode.WorkspaceFolder): vscode.Task {
    const path = definition.path ?? '.';
    const args =
      definition.verb === 'check'
        ? ['check', path, '--color', 'never']
        : ['build', path, '-o', definition.output ?? outputFolder, '--color', 'never'];
    const name = definition.verb === 'check' ? 'check the library' : 'build the cards';
    const execution = new vscode.ProcessExecution(program(), args, { cwd: folder.uri.fsPath });
    // What a running server has told already would stand among the problems twice.
    const matchers = this.connection.state.kind === 'running' ? [] : ['$procscript'];
    const made = new vscode.Task(definition, folder, name, 'procscript', execution, matchers);
    made.group = definition.verb === 'build' ? vscode.TaskGroup.Build : vscode.TaskGroup.Test;
    return made;
  }
}
