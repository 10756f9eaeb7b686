import { readFile } from 'node:fs/promises';
import * as vscode from 'vscode';
import type { ViewChoice } from './choice';
import type { Plan } from './plan';
import { headingOf, nameAt, procedureAround, procedureAt } from './procedureAt';
import type { ServerConnection, WrittenView } from './serverConnection';
import { addressed, isSource, moved, type StepPlaces, stretchAt } from './stepPlaces';

/** A procedure in a text. */
export interface Target {
  readonly document: vscode.TextDocument;
  readonly heading: number;
}

/** The job that is followed: its plan, or why there is none. */
export interface Job extends Target {
  /** The procedure's name: it stays while lines come and go above. */
  readonly name: string;
  /** The last plan that was proven. */
  readonly plan: Plan | undefined;
  /** Where the steps of that plan come from. */
  readonly places: StepPlaces | undefined;
  /** Why the text as it is now has no plan. */
  readonly problem: string | undefined;
  /** What view that is of the procedure, and which others there are. */
  readonly written: WrittenView | undefined;
}

/** So long after the last key a plan is asked for, in milliseconds. */
const pause = 200;

/**
 * Keeps the plan of the procedure that the cursor is in. While the cursor is at something that the job is made from (a procedure that it does,
 * its machine), it stays the job.
 */
export class PlanWatcher implements vscode.Disposable {
  private readonly changes = new vscode.EventEmitter<Job | undefined>();
  private readonly subscriptions: vscode.Disposable[];
  private timer: NodeJS.Timeout | undefined;
  private readonly chosen = new Map<string, ViewChoice>();
  private asked = 0;
  private job: Job | undefined;
  private called: Target | undefined;

  /** The job is another one, or its plan or problem is. */
  readonly onDidChange = this.changes.event;

  constructor(private readonly connection: ServerConnection) {
    this.subscriptions = [
      connection.onDidRestart(() => this.later()),
      vscode.window.onDidChangeActiveTextEditor(() => this.later()),
      vscode.workspace.onDidChangeTextDocument((change) => this.changed(change)),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
        const target = this.targetAt(textEditor);
        if (target !== undefined && !isSame(target, this.job)) {
          this.later();
        }
      }),
    ];
    this.later();
  }

  /** The job that is followed. */
  get current(): Job | undefined {
    return this.job;
  }

  /** Has the server write one of its views of a job, and reads it. */
  async view(command: string, job: Target): Promise<{ written: WrittenView; text: string }> {
    const chosen = this.chosen.get(keyOf(job));
    const written = await this.connection.execute(command, {
      uri: this.connection.addressOf(job.document.uri),
      position: { line: job.heading, character: 'procedure '.length },
      ...(chosen === undefined ? {} : { job: chosen.job, options: chosen.options }),
    });
    return { written, text: await readFile(vscode.Uri.parse(written.uri).fsPath, 'utf8') };
  }

  /** From now on the procedure of a job is shown with these arguments and options. */
  choose(job: Target, choice: ViewChoice): void {
    this.chosen.set(keyOf(job), choice);
    this.call(job);
  }

  /** From now on a procedure is the job, although the one so far may do it. */
  call(target: Target): void {
    this.called = target;
    this.later();
  }

  /** The procedure at an editor's cursor, where that is another than the job. */
  otherAt(editor: vscode.TextEditor): (Target & { readonly name: string }) | undefined {
    const lines = linesOf(editor.document);
    const heading = procedureAround(lines, editor.selection.active.line);
    const name = heading === undefined ? undefined : nameAt(lines, heading);
    return heading === undefined || name === undefined || isSame({ document: editor.document, heading }, this.job)
      ? undefined
      : { document: editor.document, heading, name };
  }

  dispose(): void {
    clearTimeout(this.timer);
    for (const subscription of this.subscriptions) {
      subscription.dispose();
    }
    this.changes.dispose();
  }

  private changed({ document, contentChanges }: vscode.TextDocumentChangeEvent): void {
    if (document.languageId !== 'procscript') {
      return;
    }
    if (this.job?.places !== undefined && contentChanges.length > 0) {
      // Until the server has answered, and for as long as the text is not proven, lines are found by what they were.
      this.job = { ...this.job, places: moved(this.job.places, document.uri.toString(), contentChanges) };
    }
    this.later();
  }

  private later(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.ask(), pause);
  }

  private async ask(): Promise<void> {
    const target = this.wanted();
    const name = target === undefined ? undefined : nameAt(linesOf(target.document), target.heading);
    if (target === undefined || name === undefined) {
      return;
    }
    const earlier = isSame(target, this.job) ? this.job : undefined;
    const question = ++this.asked;
    let next: Job = { plan: undefined, places: undefined, written: undefined, ...earlier, ...target, name, problem: undefined };
    const version = target.document.version;
    try {
      const { written, text } = await this.view('procscript.view.plan', next);
      const places = JSON.parse((await this.view('procscript.view.places', next)).text) as StepPlaces;
      next = { ...next, plan: JSON.parse(text) as Plan, places: addressed(places, (uri) => vscode.Uri.parse(uri).toString()), written };
    } catch (error) {
      // Lines may have come and gone meanwhile.
      const places = earlier === undefined ? undefined : this.job?.places;
      next = { ...next, places, problem: error instanceof Error ? error.message : String(error) };
    }
    // Of several questions under way only the last one's answer counts; of a text that has changed meanwhile, the next one's.
    if (question === this.asked && version === target.document.version) {
      this.job = next;
      this.called = undefined;
      this.changes.fire(next);
    }
  }

  /** What to ask for: what was called for, what the cursor is in, or, while it is elsewhere, such as among the cards, what was followed so far. */
  private wanted(): Target | undefined {
    const editor = vscode.window.activeTextEditor;
    return this.called ?? (editor === undefined ? this.followed() : this.targetAt(editor));
  }

  /** The job so far, where it begins by now. */
  private followed(): Target | undefined {
    const heading = this.job === undefined ? undefined : headingOf(linesOf(this.job.document), this.job.name);
    return this.job === undefined || heading === undefined ? undefined : { document: this.job.document, heading };
  }

  /** The procedure that an editor's cursor is about. */
  private targetAt({ document, selection: { active } }: vscode.TextEditor): Target | undefined {
    if (document.languageId !== 'procscript') {
      return undefined;
    }
    const lines = linesOf(document);
    const around = procedureAround(lines, active.line);
    const followed = this.followed();
    const places = this.job?.places;
    if (followed !== undefined && places !== undefined) {
      const uri = document.uri.toString();
      if (around === undefined ? isSource(places, uri) : stretchAt(places, uri, active) !== undefined) {
        return followed;
      }
    }
    const heading = around ?? procedureAt(lines, active.line);
    return heading === undefined ? undefined : { document, heading };
  }
}

/** What a procedure is remembered by: the lines above it may change. */
export function keyOf({ document, heading }: Target): string {
  return `${document.uri.toString()} ${nameAt(linesOf(document), heading) ?? ''}`;
}

function isSame(target: Target, job: Job | undefined): boolean {
  return job?.document === target.document && job.name === nameAt(linesOf(target.document), target.heading);
}

function linesOf(document: vscode.TextDocument): string[] {
  return document.getText().split('\n');
}
