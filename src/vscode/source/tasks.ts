import * as vscode from 'vscode';
import { program } from './program';
import type { ServerConnection } from './serverConnection';

interface ProcScriptTask extends vscode.TaskDefinition {
  readonly verb: 'check' | 'build';
  readonly path?: string;
  readonly output?: string;
}

/** Offers to check the library and to build its cards, as tasks whose findings land among the problems. */
export class TaskProvider implements vscode.TaskProvider {
  constructor(private readonly connection: ServerConnection) {}

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

  private task(definition: ProcScriptTask, folder: vscode.WorkspaceFolder): vscode.Task {
    const path = definition.path ?? '.';
    const args =
      definition.verb === 'check'
        ? ['check', path, '--color', 'never']
        : ['build', path, '-o', definition.output ?? 'packs', '--color', 'never'];
    const name = definition.verb === 'check' ? 'check the library' : 'build the cards';
    const execution = new vscode.ProcessExecution(program(), args, { cwd: folder.uri.fsPath });
    // What a running server has told already would stand among the problems twice.
    const matchers = this.connection.state.kind === 'running' ? [] : ['$procscript'];
    const made = new vscode.Task(definition, folder, name, 'procscript', execution, matchers);
    made.group = definition.verb === 'build' ? vscode.TaskGroup.Build : vscode.TaskGroup.Test;
    return made;
  }
}
