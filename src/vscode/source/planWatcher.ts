import { readFile } from 'node:fs/promises';
import * as vscode from 'vscode';
import type { Plan } from './plan';
import { procedureAt } from './procedureAt';
import type { ServerConnection } from './serverConnection';

/** The job at the cursor: its plan, or why there is none. */
export interface Job {
  readonly document: vscode.TextDocument;
  readonly heading: number;
  /** The last plan that was proven. */
  readonly plan: Plan | undefined;
  /** Why the text as it is now has no plan. */
  readonly problem: string | undefined;
}

/** So long after the last key a plan is asked for, in milliseconds. */
const pause = 200;

/** Keeps the plan of the procedure that the cursor is in. */
export class PlanWatcher implements vscode.Disposable {
  private readonly changes = new vscode.EventEmitter<Job | undefined>();
  private readonly subscriptions: vscode.Disposable[];
  private timer: NodeJS.Timeout | undefined;
  private asked = 0;
  private job: Job | undefined;

  /** The job at the cursor is another one, or its plan or problem is. */
  readonly onDidChange = this.changes.event;

  constructor(private readonly connection: ServerConnection) {
    this.subscriptions = [
      connection.onDidRestart(() => this.later()),
      vscode.window.onDidChangeActiveTextEditor(() => this.later()),
      vscode.workspace.onDidChangeTextDocument(({ document }) => document.languageId === 'procscript' && this.later()),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        const heading = headingAt(textEditor);
        if (heading !== undefined && (this.job?.document !== textEditor.document || this.job.heading !== heading)) {
          this.later();
        }
      }),
    ];
    this.later();
  }

  /** The job at the cursor. */
  get current(): Job | undefined {
    return this.job;
  }

  /** Has the server write one of its views of the current job, and reads it. */
  async view(command: string, job: Job): Promise<string> {
    const written = await this.connection.execute(command, {
      uri: this.connection.addressOf(job.document.uri),
      position: { line: job.heading, character: 'procedure '.length },
    });
    return readFile(vscode.Uri.parse(written.uri).fsPath, 'utf8');
  }

  dispose(): void {
    clearTimeout(this.timer);
    for (const subscription of this.subscriptions) {
      subscription.dispose();
    }
    this.changes.dispose();
  }

  private later(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.ask(), pause);
  }

  private async ask(): Promise<void> {
    const editor = vscode.window.activeTextEditor;
    const heading = editor === undefined ? undefined : headingAt(editor);
    if (editor === undefined || heading === undefined) {
      return;
    }
    const earlier = this.job?.document === editor.document && this.job.heading === heading ? this.job.plan : undefined;
    const question = ++this.asked;
    let next: Job = { document: editor.document, heading, plan: earlier, problem: undefined };
    try {
      next = { ...next, plan: JSON.parse(await this.view('procscript.view.plan', next)) as Plan };
    } catch (error) {
      next = { ...next, problem: error instanceof Error ? error.message : String(error) };
    }
    // Of several questions under way only the last one's answer counts.
    if (question === this.asked) {
      this.job = next;
      this.changes.fire(next);
    }
  }
}

/** The line of the procedure at an editor's cursor. */
function headingAt({ document, selection }: vscode.TextEditor): number | undefined {
  return document.languageId === 'procscript' ? procedureAt(document.getText().split('\n'), selection.active.line) : undefined;
}
