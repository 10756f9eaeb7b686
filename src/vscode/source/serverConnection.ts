import * as vscode from 'vscode';
import {
  CloseAction,
  type DynamicFeature,
  ErrorAction,
  ExecuteCommandRequest,
  LanguageClient,
  type LanguageClientOptions,
  type Position,
  State,
  type StaticFeature,
} from 'vscode-languageclient/node';
import type { CheckTracker } from './checkTracker';
import type { ViewChoice } from './choice';
import { chosen, extensionVersion } from './program';
import { mismatch, notStarted } from './programChoice';
import { offerHelp } from './programHelp';
import type { ServerState } from './status';

/** So many times in a row a server that ends is started again by itself. */
const restarts = 3;

/** A server that ran for this long did not fail at its start, in milliseconds. */
const stable = 60_000;

/** Which job a view is to be made of. */
export interface ViewArguments {
  readonly uri: string;
  readonly position?: Position;
  readonly job?: string;
  readonly options?: readonly string[];
  readonly show?: boolean;
}

/** A view that the server has written. */
export interface WrittenView {
  readonly uri: string;
  readonly job: string;
  readonly title: string;
  readonly options: readonly string[];
  readonly choices: readonly ViewChoice[];
}

/**
 * The client, without commands of its own for those of the server: the extension has them, shows the views in its panels, and keeps them
 * when a server that failed is replaced.
 */
class Client extends LanguageClient {
  // biome-ignore lint/suspicious/noExplicitAny: as the client declares it.
  override registerFeature(feature: StaticFeature | DynamicFeature<any>): void {
    if (!('registrationType' in feature) || feature.registrationType.method !== ExecuteCommandRequest.method) {
      super.registerFeature(feature);
    }
  }
}

/** The language server and the line to it. */
export class ServerConnection implements vscode.Disposable {
  private readonly changes = new vscode.EventEmitter<void>();
  private readonly restarts = new vscode.EventEmitter<void>();
  private client: LanguageClient | undefined;
  private current: ServerState = { kind: 'stopped' };
  private started = 0;
  private restarted = 0;
  private toldMismatch: string | undefined;
  private queue: Promise<void> = Promise.resolve();

  /** Something that the status shows has changed. */
  readonly onDidChange = this.changes.event;

  /** A server has come up, and what an earlier one said no longer counts. */
  readonly onDidRestart = this.restarts.event;

  constructor(
    private readonly tracker: CheckTracker,
    private readonly output: vscode.LogOutputChannel,
  ) {}

  /** What the server is doing. */
  get state(): ServerState {
    return this.current;
  }

  /** Starts the server, in place of an earlier one. Two requests at once are served one after the other, and leave one server. */
  start(): Promise<void> {
    this.queue = this.queue.then(() => this.startAnew());
    return this.queue;
  }

  /** From now on the texts that are shown count as not judged, until the server has judged them. */
  expectVisible(): void {
    for (const { document } of vscode.window.visibleTextEditors) {
      if (document.languageId === 'procscript') {
        this.tracker.expect(document.uri.toString(), document.version, Date.now());
      }
    }
    this.changes.fire();
  }

  /** Has the server carry out one of its commands. */
  async execute(command: string, ...given: ViewArguments[]): Promise<WrittenView> {
    const client = this.current.kind === 'running' ? this.client : undefined;
    if (client === undefined) {
      throw new Error('The language server is not running.');
    }
    return client.sendRequest(ExecuteCommandRequest.type, { command, arguments: given }) as Promise<WrittenView>;
  }

  /** How the server is told of a file. */
  addressOf(uri: vscode.Uri): string {
    return this.client?.code2ProtocolConverter.asUri(uri) ?? uri.toString();
  }

  dispose(): void {
    void this.stop();
    this.changes.dispose();
    this.restarts.dispose();
  }

  private async startAnew(): Promise<void> {
    await this.stop();
    const program = chosen();
    const client = new Client('procscript', 'ProcScript', { command: program.command, args: ['server'] }, this.options());
    client.onDidChangeState(({ newState }) => {
      if (this.client === client) {
        this.follow(newState);
      }
    });
    this.client = client;
    this.restarted = 0;
    this.started = Date.now();
    this.set({ kind: 'starting' });
    try {
      await client.start();
      this.compare(client.initializeResult?.serverInfo?.version);
    } catch (error) {
      this.output.error(String(error));
      const reason = notStarted(program);
      this.set({ kind: 'failed', reason });
      void offerHelp(reason);
    }
  }

  /** A program of another version is told once: it works, but what the two know of each other may differ. */
  private compare(version: string | undefined): void {
    const told = mismatch(version, extensionVersion());
    if (told !== undefined && told !== this.toldMismatch) {
      this.toldMismatch = told;
      void vscode.window.showWarningMessage(told);
    }
  }

  private async stop(): Promise<void> {
    const client = this.client;
    this.client = undefined;
    this.tracker.reset();
    this.set({ kind: 'stopped' });
    try {
      await client?.dispose();
    } catch (error) {
      // It had failed already, and said so.
      this.output.debug(String(error));
    }
  }

  private options(): LanguageClientOptions {
    return {
      documentSelector: [{ language: 'procscript' }],
      outputChannel: this.output,
      middleware: {
        provideDiagnostics: async (document, previous, token, next) => {
          const shown = document instanceof vscode.Uri ? undefined : document;
          const version = shown?.version;
          const report = await next(document, previous, token);
          if (shown !== undefined && version !== undefined && report !== null && report !== undefined) {
            this.answered(shown.uri, version);
          }
          return report;
        },
      },
      errorHandler: {
        error: () => ({ action: ErrorAction.Continue }),
        closed: () => this.closed(),
      },
    };
  }

  private answered(uri: vscode.Uri, version: number): void {
    this.tracker.answered(uri.toString(), version);
    this.changes.fire();
  }

  private closed(): { action: CloseAction; handled: boolean } {
    this.restarted = Date.now() - this.started > stable ? 0 : this.restarted + 1;
    if (this.restarted <= restarts) {
      return { action: CloseAction.Restart, handled: true };
    }
    this.set({ kind: 'failed', reason: 'The language server ended again and again.' });
    return { action: CloseAction.DoNotRestart, handled: true };
  }

  private follow(state: State): void {
    if (state === State.Running) {
      this.started = Date.now();
      this.set({ kind: 'running' });
      this.expectVisible();
      this.restarts.fire();
    } else if (state === State.Starting) {
      this.started = Date.now();
      this.set({ kind: 'starting' });
    } else if (this.current.kind !== 'failed') {
      this.tracker.reset();
      this.set({ kind: 'stopped' });
    }
  }

  private set(state: ServerState): void {
    this.current = state;
    this.changes.fire();
  }
}
