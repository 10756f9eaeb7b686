import * as vscode from 'vscode';
import type { Card, Step } from './plan';
import type { Job, PlanWatcher } from './planWatcher';
import { originOf, stretchAt } from './stepPlaces';

type Node = { readonly card: Card; readonly step?: Step };

/** The refit in the order that was worked out, as a tree: cards, and their steps, each leading to where it was written. */
export class RefitTree implements vscode.TreeDataProvider<Node>, vscode.Disposable {
  private readonly changes = new vscode.EventEmitter<void>();
  private readonly view: vscode.TreeView<Node>;
  private readonly subscriptions: vscode.Disposable[];
  private job: Job | undefined;
  private nodes: { node: Node; steps: Node[] }[] = [];

  readonly onDidChangeTreeData = this.changes.event;

  constructor(private readonly watcher: PlanWatcher) {
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
    const place = this.job?.places === undefined ? undefined : originOf(this.job.places, step.number)?.written;
    if (place !== undefined) {
      const { start } = place.range;
      const at = new vscode.Range(start.line, start.character, start.line, start.character);
      item.command = {
        command: 'vscode.open',
        title: 'Show where it was written',
        arguments: [vscode.Uri.parse(place.uri), { selection: at }],
      };
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
    const places = this.watcher.current?.places;
    const numbers = places === undefined ? [] : (stretchAt(places, editor.document.uri.toString(), editor.selection.active)?.steps ?? []);
    const node = this.nodes.flatMap((entry) => entry.steps).find(({ step }) => step !== undefined && numbers.includes(step.number));
    if (node !== undefined) {
      void this.view.reveal(node, { select: true, focus: false });
    }
  }
}
