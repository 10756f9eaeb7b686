import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import * as path from 'node:path';
import * as vscode from 'vscode';

/**
 * Opens pages in the user's browser. Where the editor's window runs on another machine than its files, or in a browser itself, no address of
 * a file leads there: the page is handed out on this machine then, under a name that nobody could guess, and only the ones that were opened.
 */
export class Browser implements vscode.Disposable {
  private readonly pages = new Map<string, string>();
  private server: Promise<Server> | undefined;

  /** Opens a page of the disk. */
  async open(page: vscode.Uri): Promise<void> {
    const isHere = vscode.env.remoteName === undefined && vscode.env.uiKind === vscode.UIKind.Desktop;
    const opened = await vscode.env.openExternal(isHere ? page : await this.handedOut(page.fsPath));
    if (!opened) {
      void vscode.window.showErrorMessage(`The cards were not opened in a browser. They are in ${page.fsPath}.`);
    }
  }

  dispose(): void {
    void this.server?.then((server) => server.close());
  }

  private async handedOut(file: string): Promise<vscode.Uri> {
    this.server ??= this.start();
    const { port } = (await this.server).address() as AddressInfo;
    const name = `/${randomBytes(16).toString('hex')}/${encodeURIComponent(path.basename(file))}`;
    this.pages.set(name, file);
    return vscode.env.asExternalUri(vscode.Uri.parse(`http://127.0.0.1:${port}${name}`));
  }

  private start(): Promise<Server> {
    const server = createServer(async ({ url }, answer) => {
      const file = this.pages.get(url ?? '');
      try {
        if (file === undefined) {
          throw new Error('No such page.');
        }
        const page = await readFile(file);
        answer.writeHead(200, { 'Content-Type': 'text/html; charset=utf-8', 'Cache-Control': 'no-store' }).end(page);
      } catch {
        answer.writeHead(404, { 'Content-Type': 'text/plain' }).end('This page is not there any more: open the cards again.');
      }
    });
    return new Promise((resolve, reject) => {
      server.once('error', reject);
      server.listen(0, '127.0.0.1', () => resolve(server));
    });
  }
}
