// Drives the extension in a real VS Code as an author would, and leaves a picture of each step in FOLDER.
//
//   tests/editor/vscode/install.sh CODE_SERVER_FOLDER        once; several minutes
//   npm --prefix src/vscode run package
//   CODE_SERVER=CODE_SERVER_FOLDER node tests/editor/vscode/run.mjs FOLDER
//
// PROCSCRIPT names another program than the one built for debugging, CHROMIUM another browser than /usr/bin/chromium.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startEditor } from './editor.mjs';

const [pictures] = process.argv.slice(2);
const installed = process.env.CODE_SERVER;
if (pictures === undefined || installed === undefined) {
  process.stderr.write('usage: CODE_SERVER=FOLDER node tests/editor/vscode/run.mjs PICTURES\n');
  process.exit(2);
}
mkdirSync(pictures, { recursive: true });
const built = fileURLToPath(new URL('../../../src/ProcScript.Cli/bin/Debug/net10.0/procscript', import.meta.url));
const editor = await startEditor({ installed, program: process.env.PROCSCRIPT ?? built, browser: process.env.CHROMIUM ?? '/usr/bin/chromium' });
const { page, program } = editor;
page.setDefaultTimeout(60_000);
const status = page.locator('#procscript\\.procscript\\.procscript\\.status, [id*="procscript.status"]').first();

try {
  await step('a procedure is checked', async () => {
    await open('pump.proc');
    await status.waitFor();
    await told(/Checked: no findings/);
  });

  await step('a line taken out brings a finding', async () => {
    await goTo(19);
    await page.keyboard.press('Control+Shift+K');
    await page.locator('.squiggly-error').first().waitFor();
    await told(/Checked: 1 error/);
    await command('View: Toggle Problems');
    await page.locator('.markers-panel', { hasText: 'PRC3001' }).waitFor();
  });

  await step('the line put back takes the finding away', async () => {
    await page.locator('.editor-instance .view-lines').first().click();
    await page.keyboard.press('Control+Z');
    await told(/Checked: no findings/);
  });

  await step('a snippet writes a stage', async () => {
    await goTo(21);
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await command('Insert Snippet');
    await page.locator('.quick-input-box input').fill('A stage of a procedure');
    await page.locator('.quick-input-list .monaco-list-row', { hasText: 'Stage' }).first().click();
    await page.locator('.view-line', { hasText: 'stage "Cover" {' }).waitFor();
    await command('File: Revert File');
    await told(/Checked: no findings/);
  });

  await step('the task builds the cards', async () => {
    await command('ProcScript: Build the Cards');
    await page.locator('.xterm-rows', { hasText: /\d+ packs written/ }).waitFor();
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: 'packs' }).waitFor();
  });

  await step('a server that is killed is started again, and one that keeps dying is told as not checked', async () => {
    for (let death = 0; death < 4; death++) {
      const process = await running();
      execFileSync('kill', ['-9', process]);
      await gone(process);
    }
    await told(/not checked|ended again and again/);
    assert.equal(await status.locator('.codicon-check').count(), 0);
  });

  await step('the status item starts it again', async () => {
    await status.click();
    await told(/Checked: no findings/);
  });
} finally {
  await editor.stop();
}

/** Does a step, tells of it and takes a picture, also of what went wrong. */
async function step(name, act) {
  const picture = join(pictures, `${name.replaceAll(/[^a-z]+/g, '-')}.png`);
  try {
    await act();
    process.stdout.write(`ok - ${name}\n`);
  } catch (error) {
    process.stdout.write(`not ok - ${name}\n`);
    throw error;
  } finally {
    await page.screenshot({ path: picture });
  }
}

async function open(file) {
  await page.keyboard.press('Control+P');
  await page.locator('.quick-input-box input').fill(file);
  await page.locator('.quick-input-list .monaco-list-row', { hasText: file }).first().click();
  await page.locator(`.tab[data-resource-name="${file}"]`).waitFor();
}

async function goTo(line) {
  await page.keyboard.press('Control+G');
  await page.locator('.quick-input-box input').fill(`:${line}`);
  await page.keyboard.press('Enter');
  await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
}

async function command(title) {
  await page.keyboard.press('F1');
  await page.locator('.quick-input-box input').fill(`>${title}`);
  await page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first().click();
  await page.waitForTimeout(300);
}

/** Waits until the status says it. */
async function told(words) {
  await page.waitForFunction(
    ([source]) => new RegExp(source).test(document.querySelector('[id*="procscript.status"]')?.getAttribute('aria-label') ?? ''),
    [words.source],
  );
}

/** The process of the editor's language server. */
async function running() {
  for (;;) {
    try {
      return execFileSync('pgrep', ['-f', '-n', `^${program} server`], { encoding: 'utf8' }).trim();
    } catch {
      await page.waitForTimeout(200);
    }
  }
}

async function gone(process) {
  for (;;) {
    try {
      execFileSync('kill', ['-0', process], { stdio: 'ignore' });
      await page.waitForTimeout(100);
    } catch {
      return;
    }
  }
}
