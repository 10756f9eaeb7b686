import { readFile } from 'node:fs/promises';
import * as vscode from 'vscode';
import type { ViewChoice } from './choice';
import type { Plan } from './plan';
import { nameAt, procedureAt } from './procedureAt';
import type { ServerConnection, WrittenView } from './serverConnection';

/** The job at the cursor: its plan, or why there is none. */
export interface Job {
  readonly document: vscode.TextDocument;
  readonly heading: number;
  /** The last plan that was proven. */
  readonly plan: Plan | undefined;
  /** Why the text as it is now has no plan. */
  readonly problem: string | undefined;
  /** What view that is of the procedure, and which others there are. */
  readonly written: WrittenView | undefined;
}

/** So long after the last key a plan is asked for, in milliseconds. */
const pause = 200;

/** Keeps the plan of the procedure that the cursor is in. */
export class PlanWatcher implements vscode.Disposable {
  private readonly changes = new vscode.EventEmitter<Job | undefined>();
  private readonly subscriptions: vscode.Disposable[];
  private timer: NodeJS.Timeout | undefined;
  private readonly chosen = new Map<string, ViewChoice>();
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
  async view(command: string, job: Pick<Job, 'document' | 'heading'>): Promise<{ written: WrittenView; text: string }> {
    const chosen = this.chosen.get(keyOf(job));
    const written = await this.connection.execute(command, {
      uri: this.connection.addressOf(job.document.uri),
      position: { line: job.heading, character: 'procedure '.length },
      ...(chosen === undefined ? {} : { job: chosen.job, options: chosen.options }),
    });
    return { written, text: await readFile(vscode.Uri.parse(written.uri).fsPath, 'utf8') };
  }

  /** From now on the procedure of a job is shown with these arguments and options. */
  choose(job: Pick<Job, 'document' | 'heading'>, choice: ViewChoice): void {
    this.chosen.set(keyOf(job), choice);
    this.later();
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
    // While the cursor is elsewhere, such as among the cards, the job stays the one that it was in.
    const document = editor?.document ?? this.job?.document;
    const heading = editor === undefined ? this.job?.heading : headingAt(editor);
    if (document === undefined || heading === undefined) {
      return;
    }
    const earlier = this.job?.document === document && this.job.heading === heading ? this.job : undefined;
    const question = ++this.asked;
    let next: Job = { document, heading, plan: earlier?.plan, problem: undefined, written: earlier?.written };
    try {
      const { written, text } = await this.view('procscript.view.plan', next);
      next = { ...next, plan: JSON.parse(text) as Plan, written };
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

/** What a procedure is remembered by: the lines above it may change. */
function keyOf({ document, heading }: Pick<Job, 'document' | 'heading'>): string {
  return `${document.uri.toString()} ${nameAt(document.getText().split('\n'), heading) ?? ''}`;
}

/** The line of the procedure at an editor's cursor. */
function headingAt({ document, selection }: vscode.TextEditor): number | undefined {
  return document.languageId === 'procscript' ? procedureAt(document.getText().split('\n'), selection.active.line) : undefined;
}
