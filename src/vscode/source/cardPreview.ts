import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';
import { isSame, wordsOf } from './choice';
import { placeOf } from './places';
import { stepAt, stepsOf } from './plan';
import type { Job, PlanWatcher } from './planWatcher';
import { emptyPage, type FromPage, previewPage, type ToPage } from './previewPage';

/** The cards of the job at the cursor, beside the text. The step of the cursor is shown; a step that is selected leads to its line. */
export class CardPreview implements vscode.Disposable {
  private readonly subscriptions: vscode.Disposable[];
  private panel: vscode.WebviewPanel | undefined;
  private shown: Job | undefined;

  constructor(private readonly watcher: PlanWatcher) {
    this.subscriptions = [
      watcher.onDidChange((job) => void this.update(job)),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor, kind }) => {
        if (kind !== undefined) {
          this.follow(textEditor);
        }
      }),
    ];
  }

  /** Opens the cards beside the text, or brings them to the front. */
  open(): void {
    if (this.panel !== undefined) {
      this.panel.reveal(undefined, true);
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
    const same = this.shown?.document === job.document && this.shown.heading === job.heading;
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
      if (this.watcher.current === job && this.panel === panel) {
        this.shown = job;
        panel.title = `Cards: ${job.plan?.title ?? ''}`;
        panel.webview.html = previewPage(text, randomBytes(16).toString('hex'), {
          names: written.choices.map(wordsOf),
          shown: written.choices.findIndex((choice) => isSame(choice, written)),
        });
      }
    } catch (error) {
      panel.webview.html = emptyPage(error instanceof Error ? error.message : String(error));
    }
  }

  private hear(message: FromPage): void {
    if (message.kind === 'ready') {
      const editor = vscode.window.visibleTextEditors.find(({ document }) => document === this.shown?.document);
      if (editor !== undefined) {
        this.follow(editor);
      }
      return;
    }
    const job = this.shown;
    if (message.kind === 'print') {
      // What is shown, with its arguments and options, and not what is at the cursor by now.
      const { job: name, options } = job?.written ?? {};
      void vscode.commands.executeCommand(
        'procscript.openInBrowser',
        job && name && { uri: job.document.uri.toString(), job: name, options },
      );
      return;
    }
    if (message.kind === 'choose') {
      const choice = job?.written?.choices[message.index];
      if (job !== undefined && choice !== undefined) {
        this.watcher.choose(job, choice);
      }
      return;
    }
    const step = job?.plan === undefined ? undefined : stepsOf(job.plan).find(({ number }) => number === message.number);
    const place = job === undefined || step === undefined ? undefined : placeOf(job, step);
    if (place !== undefined) {
      void vscode.window.showTextDocument(place.uri, { viewColumn: vscode.ViewColumn.One, selection: place.range });
    }
  }

  /** Shows the step at an editor's cursor. */
  private follow({ document, selection }: vscode.TextEditor): void {
    if (this.shown?.plan === undefined || document.languageId !== 'procscript') {
      return;
    }
    const step = stepAt(stepsOf(this.shown.plan), document.uri.path, selection.active.line + 1);
    if (step !== undefined) {
      this.tell({ kind: 'reveal', number: step.number });
    }
  }

  private tell(message: ToPage): void {
    void this.panel?.webview.postMessage(message);
  }
}
