import * as vscode from 'vscode';
import { placeOf } from './places';
import { type Card, type Step, stepAt } from './plan';
import type { Job, PlanWatcher } from './planWatcher';

type Node = { readonly card: Card; readonly step?: Step };

/** The refit in the order that was worked out, as a tree: cards, and their steps, each leading to where it was written. */
export class RefitTree implements vscode.TreeDataProvider<Node>, vscode.Disposable {
  private readonly changes = new vscode.EventEmitter<void>();
  private readonly view: vscode.TreeView<Node>;
  private readonly subscriptions: vscode.Disposable[];
  private job: Job | undefined;
  private nodes: { node: Node; steps: Node[] }[] = [];

  readonly onDidChangeTreeData = this.changes.event;

  constructor(watcher: PlanWatcher) {
    this.view = vscode.window.createTreeView('procscript.refit', { treeDataProvider: this, showCollapseAll: true });
    this.subscriptions = [
      watcher.onDidChange((job) => this.show(job)),
      vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => this.follow(textEditor)),
    ];
    this.show(watcher.current);
  }

  getChildren(node?: Node): Node[] {
    return node === undefined ? this.nodes.map((entry) => entry.node) : (this.nodes.find((entry) => entry.node === node)?.steps ?? []);
  }

  getParent(node: Node): Node | undefined {
    return node.step === undefined ? undefined : this.nodes.find((entry) => entry.steps.includes(node))?.node;
  }

  getTreeItem({ card, step }: Node): vscode.TreeItem {
    if (step === undefined) {
      return new vscode.TreeItem(card.title, vscode.TreeItemCollapsibleState.Expanded);
    }
    const item = new vscode.TreeItem(`${step.number}  ${step.text}`);
    item.description = step.torque;
    item.tooltip = [step.text, step.torque, step.because].filter((part) => part !== '').join('\n');
    const place = this.job === undefined ? undefined : placeOf(this.job, step);
    if (place !== undefined) {
      item.command = { command: 'vscode.open', title: 'Show where it was written', arguments: [place.uri, { selection: place.range }] };
    }
    return item;
  }

  dispose(): void {
    for (const subscription of this.subscriptions) {
      subscription.dispose();
    }
    this.view.dispose();
    this.changes.dispose();
  }

  private show(job: Job | undefined): void {
    this.job = job;
    this.nodes = (job?.plan?.refit ?? []).map((card) => ({ node: { card }, steps: card.steps.map((step) => ({ card, step })) }));
    this.view.description = job?.plan?.title ?? '';
    this.view.message =
      job?.problem === undefined ? '' : `${this.nodes.length > 0 ? 'As it was before the last change. ' : ''}${job.problem}`;
    this.changes.fire();
  }

  private follow(editor: vscode.TextEditor): void {
    if (!this.view.visible || editor.document.languageId !== 'procscript') {
      return;
    }
    const steps = this.nodes.flatMap((entry) => entry.steps);
    const line = editor.selection.active.line + 1;
    const wanted = stepAt(
      steps.flatMap(({ step }) => step ?? []),
      editor.document.uri.path,
      line,
    );
    const node = steps.find(({ step }) => step === wanted);
    if (node !== undefined) {
      void this.view.reveal(node, { select: true, focus: false });
    }
  }
}
