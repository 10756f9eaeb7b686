// A real VS Code with the packaged extension, in a browser; on a copy of the demo library, or in an empty folder.
import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const { chromium } = createRequire(join(root, 'src/vscode/package.json'))('playwright-core');

const settings = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.colorTheme': 'Default Light Modern',
  'telemetry.telemetryLevel': 'off',
  'extensions.ignoreRecommendations': true,
  'chat.disableAIFeatures': true,
  'editor.minimap.enabled': false,
  'files.autoSave': 'off',
  'terminal.integrated.gpuAcceleration': 'off',
};

/** Where the program lies that was built for debugging. */
export const built = join(root, 'src/ProcScript.Cli/bin/Debug/net10.0/procscript');

/**
 * Starts the editor.
 * @param installed the folder that install.sh made.
 * @param program the program to check with.
 * @param browser the browser.
 * @param empty whether the folder is empty; else it is a copy of the demo library.
 */
export async function startEditor({ installed, program, browser, empty = false }) {
  const work = mkdtempSync(join(tmpdir(), 'procscript-editor-'));
  const library = join(work, 'library');
  if (empty) {
    mkdirSync(library);
  } else {
    cpSync(join(root, 'procedures'), library, { recursive: true });
    writeFileSync(join(library, 'procscript.json'), '{}\n');
  }
  // A name of its own, so that its processes are told from those of other editors.
  const own = join(work, 'procscript');
  symlinkSync(program, own);
  const user = join(work, 'user');
  writeSettings(join(user, 'User'), settings);
  // Where a program lies is a setting of the machine that the server runs on, not of the browser's user.
  writeSettings(join(user, 'Machine'), { 'procscript.path': own });

  const node = join(installed, 'node/node_modules/node/bin/node');
  const entry = join(installed, 'code/node_modules/code-server/out/node/entry.js');
  const folders = ['--user-data-dir', user, '--extensions-dir', join(work, 'extensions')];
  const added = spawnSync(node, [entry, ...folders, '--install-extension', join(root, 'src/vscode/procscript.vsix')], { encoding: 'utf8' });
  if (added.status !== 0) {
    throw new Error(`The extension was not installed: ${added.stdout}${added.stderr}`);
  }

  const port = await freePort();
  const server = spawn(node, [entry, ...folders, '--auth', 'none', '--bind-addr', `127.0.0.1:${port}`, '--disable-telemetry', '--disable-update-check'], {
    stdio: 'ignore',
    detached: true,
  });
  const chrome = await chromium.launch({ executablePath: browser, args: ['--no-sandbox'] });
  const page = await chrome.newPage({ viewport: { width: 1400, height: 900 } });
  await reached(page, `http://127.0.0.1:${port}/?folder=${library}`);
  page.setDefaultTimeout(60_000);
  return {
    page,
    library,
    program: own,
    /** Has the setting name a program of another version. */
    useOtherVersion() {
      const other = join(work, 'other-version');
      const through = `require('node:child_process').spawn(${JSON.stringify(own)}, process.argv.slice(2), { stdio: ['inherit', 'pipe', 'inherit'] })`;
      writeFileSync(other, `#!${node}\n${through}.stdout.on('data', (data) => process.stdout.write(Buffer.from(data.toString('latin1').replace(/("version":")\\d/, '$19'), 'latin1')));\n`, { mode: 0o755 });
      this.use(other);
    },
    /** Has the setting name a program. */
    use(path) {
      writeSettings(join(user, 'Machine'), { 'procscript.path': path });
    },
    async stop() {
      await chrome.close();
      process.kill(-server.pid);
      rmSync(work, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    },
  };
}

function writeSettings(folder, values) {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'settings.json'), JSON.stringify(values, null, 2));
}

/** A port that nothing uses at this moment. */
function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

async function reached(page, address) {
  for (let attempt = 0; ; attempt++) {
    try {
      await page.goto(address);
      await page.waitForSelector('.monaco-workbench', { timeout: 60_000 });
      return;
    } catch (error) {
      if (attempt === 60) {
        throw error;
      }
      await page.waitForTimeout(1000);
    }
  }
}
