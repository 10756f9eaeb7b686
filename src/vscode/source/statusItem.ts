import * as vscode from 'vscode';
import type { CheckTracker } from './checkTracker';
import type { ServerConnection } from './serverConnection';
import { statusOf } from './status';

/** The item in the status bar. It is there as soon as the extension is: whoever opens a library sees whether it is checked. */
export class StatusItem implements vscode.Disposable {
  private readonly item = vscode.window.createStatusBarItem('procscript.status', vscode.StatusBarAlignment.Right, 100);
  private readonly subscriptions: vscode.Disposable[];
  private readonly clock: NodeJS.Timeout;

  constructor(
    private readonly connection: ServerConnection,
    private readonly tracker: CheckTracker,
  ) {
    this.item.name = 'ProcScript';
    this.subscriptions = [
      connection.onDidChange(() => this.update()),
      vscode.window.onDidChangeVisibleTextEditors(() => this.update()),
      vscode.languages.onDidChangeDiagnostics(() => this.update()),
    ];
    // A server that falls silent sends no event to say so.
    this.clock = setInterval(() => this.update(), 1000);
    this.update();
  }

  dispose(): void {
    clearInterval(this.clock);
    for (const subscription of this.subscriptions) {
      subscription.dispose();
    }
    this.item.dispose();
  }

  private update(): void {
    const severities = vscode.languages
      .getDiagnostics()
      .filter(([uri]) => uri.path.endsWith('.proc'))
      .flatMap(([, findings]) => findings.map((finding) => finding.severity));
    const count = (severity: vscode.DiagnosticSeverity) => severities.filter((one) => one === severity).length;
    const errors = count(vscode.DiagnosticSeverity.Error);
    const warnings = count(vscode.DiagnosticSeverity.Warning);
    const status = statusOf({
      server: this.connection.state,
      waitingSince: this.tracker.waitingSince,
      errors,
      warnings,
      hints: severities.length - errors - warnings,
      now: Date.now(),
    });
    this.item.text = status.text;
    this.item.tooltip = status.tooltip;
    this.item.command = status.state === 'failed' ? 'procscript.restart' : 'workbench.actions.view.problems';
    this.item.backgroundColor = status.state === 'failed' ? new vscode.ThemeColor('statusBarItem.errorBackground') : undefined;
    this.item.show();
  }
}
