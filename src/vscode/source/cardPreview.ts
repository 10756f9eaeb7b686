import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';
import { isSame, wordsOf } from './choice';
import { originsOf } from './origins';
import { type Job, keyOf, type PlanWatcher } from './planWatcher';
import { emptyPage, type FromPage, type Page, previewPage, type ToPage } from './previewPage';
import type { RecordKeeper } from './records';
import { type Location, originOf, stretchAt } from './stepPlaces';

/** The cards of the job at the cursor, beside the text. The steps of the cursor are shown; a step that is selected leads to its line. */
export class CardPreview implements vscode.Disposable {
  private readonly subscriptions: vscode.Disposable[];
  private panel: vscode.WebviewPanel | undefined;
  private shown: { readonly job: Job; readonly text: string } | undefined;
  private page: Page = 'cards';
  private marked = '';

  constructor(
    private readonly watcher: PlanWatcher,
    private readonly records: RecordKeeper,
  ) {
    this.subscriptions = [
      watcher.onDidChange((job) => void this.update(job)),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor, kind }) => {
        if (kind !== undefined) {
          this.follow(textEditor);
        }
      }),
    ];
  }

  /** Opens the cards beside the text, or brings them to the front, with the job at the cursor. */
  open(page: Page = 'cards'): void {
    this.page = page;
    const editor = vscode.window.activeTextEditor;
    const other = editor === undefined ? undefined : this.watcher.otherAt(editor);
    if (other !== undefined) {
      this.watcher.call(other);
    }
    if (this.panel !== undefined) {
      this.panel.reveal(undefined, true);
      this.tell({ kind: 'show', page });
      return;
    }
    const column = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const panel = vscode.window.createWebviewPanel('procscript.cards', 'Cards', column, {
      enableScripts: true,
      enableFindWidget: true,
      localResourceRoots: [],
    });
    panel.onDidDispose(() => {
      this.panel = undefined;
      this.shown = undefined;
    });
    panel.webview.onDidReceiveMessage((message: FromPage) => this.hear(message));
    this.panel = panel;
    void this.update(this.watcher.current);
  }

  dispose(): void {
    this.panel?.dispose();
    for (const subscription of this.subscriptions) {
      subscription.dispose();
    }
  }

  private async update(job: Job | undefined): Promise<void> {
    const panel = this.panel;
    if (panel === undefined) {
      return;
    }
    if (job === undefined) {
      panel.webview.html = emptyPage('Put the cursor into a procedure to see its cards.');
      return;
    }
    const same = this.shown?.job.document === job.document && this.shown.job.name === job.name;
    if (job.problem !== undefined) {
      if (same) {
        this.tell({ kind: 'stale', reason: job.problem });
      } else {
        this.shown = undefined;
        panel.webview.html = emptyPage(job.problem);
      }
      return;
    }
    try {
      const { written, text } = await this.watcher.view('procscript.view.pack', job);
      if (this.watcher.current?.plan !== job.plan || this.panel !== panel) {
        return;
      }
      const choices = {
        names: written.choices.map(wordsOf),
        shown: written.choices.findIndex((choice) => isSame(choice, written)),
      };
      const all = text + JSON.stringify(choices);
      const unchanged = same && this.shown?.text === all;
      this.shown = { job, text: all };
      panel.title = `Cards: ${job.plan?.title ?? ''}`;
      if (unchanged) {
        // Nothing that is printed has changed: the page stays as it is, with its ticks, and where its reader is.
        this.tell({ kind: 'fresh' });
      } else {
        const kept = this.records.of(recordsOf(job));
        panel.webview.html = previewPage(text, randomBytes(16).toString('hex'), { ...choices, page: this.page, kept });
      }
    } catch (error) {
      this.shown = undefined;
      panel.webview.html = emptyPage(error instanceof Error ? error.message : String(error));
    }
  }

  private hear(message: FromPage): void {
    const job = this.shown?.job;
    switch (message.kind) {
      case 'ready':
        this.followVisible();
        return;
      case 'page':
        this.page = message.page;
        return;
      case 'print': {
        // What is shown, with its arguments and options, and not what is at the cursor by now.
        const { job: name, options } = job?.written ?? {};
        void vscode.commands.executeCommand(
          'procscript.openInBrowser',
          job && name && { uri: job.document.uri.toString(), job: name, options },
        );
        return;
      }
      case 'choose': {
        const choice = job?.written?.choices[message.index];
        if (job !== undefined && choice !== undefined) {
          this.watcher.choose(job, choice);
        }
        return;
      }
      case 'other': {
        const editor = vscode.window.visibleTextEditors.find((one) => this.watcher.otherAt(one) !== undefined);
        const other = editor === undefined ? undefined : this.watcher.otherAt(editor);
        if (other !== undefined) {
          this.watcher.call(other);
        }
        return;
      }
      case 'record':
      case 'forget':
      case 'current':
        if (job !== undefined) {
          this.records.hear(recordsOf(job), message);
        }
        return;
      case 'step':
      case 'place':
        void this.goTo(message.number, message.kind === 'place' ? message.call : -1);
    }
  }

  /** Shows in the text where a step comes from: its line, or one of the `do` lines that brought it in. */
  private async goTo(number: number, call: number): Promise<void> {
    const places = this.placesShown();
    const origin = places === undefined ? undefined : originOf(places, number);
    const place: Location | undefined = call < 0 ? origin?.written : origin?.calls[call];
    if (places === undefined || place === undefined) {
      return;
    }
    const { start } = place.range;
    const at = new vscode.Range(start.line, start.character, start.line, start.character);
    const steps = stretchAt(places, place.uri, start)?.steps ?? [];
    this.reveal(steps.includes(number) ? steps : [number], number, '');
    await vscode.window.showTextDocument(vscode.Uri.parse(place.uri), { viewColumn: vscode.ViewColumn.One, selection: at });
  }

  /** The places of what is shown, at the lines where they are by now. */
  private placesShown() {
    const job = this.shown?.job;
    const current = this.watcher.current;
    return job !== undefined && current?.document === job.document && current.name === job.name ? current.places : undefined;
  }

  private followVisible(): void {
    this.marked = '';
    const editors = vscode.window.visibleTextEditors;
    const editor =
      editors.find((one) => one === vscode.window.activeTextEditor) ??
      editors.find(({ document }) => document === this.shown?.job.document);
    if (editor !== undefined) {
      this.follow(editor);
    }
  }

  /** Shows the steps at an editor's cursor. */
  private follow(editor: vscode.TextEditor): void {
    const places = this.placesShown();
    if (places === undefined || editor.document.languageId !== 'procscript') {
      return;
    }
    const stretch = stretchAt(places, editor.document.uri.toString(), editor.selection.active);
    if (stretch !== undefined) {
      this.reveal(stretch.steps, stretch.steps[0], this.watcher.otherAt(editor)?.name ?? '');
    }
  }

  private reveal(steps: readonly number[], origin: number | undefined, other: string): void {
    const places = this.placesShown();
    const job = this.shown?.job;
    if (places !== undefined && job !== undefined) {
      const marked = steps.join();
      const origins = origin === undefined ? [] : originsOf(places, origin);
      this.tell({ kind: 'reveal', steps, scroll: marked !== this.marked, origins, other });
      this.marked = marked;
    }
  }

  private tell(message: ToPage): void {
    void this.panel?.webview.postMessage(message);
  }
}

/** What the records of a job are kept by: its procedure, with its arguments and the options of the machine. */
function recordsOf(job: Job): string {
  const { job: name = job.name, options = [] } = job.written ?? {};
  return [keyOf(job), name, ...options].join(' ');
}
