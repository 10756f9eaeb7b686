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
import { built, startEditor } from './editor.mjs';
import { handsOn } from './hands.mjs';

const [pictures] = process.argv.slice(2);
const installed = process.env.CODE_SERVER;
if (pictures === undefined || installed === undefined) {
  process.stderr.write('usage: CODE_SERVER=FOLDER node tests/editor/vscode/run.mjs PICTURES\n');
  process.exit(2);
}
mkdirSync(pictures, { recursive: true });
const editor = await startEditor({ installed, program: process.env.PROCSCRIPT ?? built, browser: process.env.CHROMIUM ?? '/usr/bin/chromium' });
const { page, program, library } = editor;
const { step, open, pressUntil, focusText, theme, goTo, command, told, status } = handsOn(page, pictures);
// The demo library has hints, of what no procedure opens.
const clean = /Checked: no (findings|errors or warnings)/;

try {
  await step('the status is there before a file is open', async () => {
    await told(/Checked/);
    assert.equal(await page.locator('.tab').count(), 0);
  });

  await step('a procedure is checked', async () => {
    await open('pump.proc');
    await told(clean);
  });

  await step('a line taken out brings a finding', async () => {
    await goTo(19);
    await page.keyboard.press('Control+Shift+K');
    await page.locator('.squiggly-error').first().waitFor();
    await told(/Checked: 1 error/);
    await command('View: Toggle Problems');
    await page.locator('.markers-panel', { hasText: 'PRC3001' }).waitFor();
  });

  await step('its quick fix takes the finding away', async () => {
    await goTo(20);
    const fix = page.locator('.action-widget .monaco-list-row', { hasText: 'disconnect pump_unions' }).first();
    await pressUntil('Control+.', fix);
    await fix.click();
    await told(clean);
    await command('File: Revert File');
  });

  await step('completion offers what can be undone here, and no more', async () => {
    await goTo(13);
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await page.keyboard.type('undo ');
    const offers = page.locator('.suggest-widget .monaco-list-row');
    await offers.first().waitFor();
    const names = (await offers.allInnerTexts()).join(', ');
    assert.match(names, /side_screws\[left/);
    assert.doesNotMatch(names, /pump_ring|cup_tray/, 'what is out of reach, and what cannot be undone');
    await page.screenshot({ path: join(pictures, 'completion.png') });
    await offers.filter({ hasText: 'side_screws[left' }).first().click();
    await page.locator('.view-line', { hasText: /^\s*undo\s+side_screws\[left\]/ }).nth(1).waitFor();
    await command('File: Revert File');
    await told(clean);
  });

  const cards = page.frameLocator('iframe.webview').frameLocator('iframe#active-frame');

  await step('the lens above a procedure opens its cards in a panel', async () => {
    await page.locator('.codelens-decoration a', { hasText: 'Cards' }).first().click();
    await cards.locator('#cover h1', { hasText: 'Replace the rotary pump' }).waitFor();
    assert.equal(page.context().pages().length, 1, 'no other window has opened');
    await page.locator('.tab', { hasText: 'Cards: Replace the rotary pump' }).waitFor();
  });

  await step('the cards stand beside the text and follow the cursor', async () => {
    await goTo(10);
    await command('ProcScript: Show the Cards Beside the Text');
    await cards.locator('#cover h1', { hasText: 'Replace the rotary pump' }).waitFor();
    await focusText();
    await goTo(20);
    await cards.locator('#step-9[style*="outline"]').waitFor();
    await goTo(13);
    await cards.locator('#step-4[style*="outline"]').waitFor();
  });

  await step('a step that is selected leads to its line', async () => {
    await cards.locator('#step-10').scrollIntoViewIfNeeded();
    await cards.locator('#step-10 th, #step-10 td').first().click();
    await page.locator('.editor-instance .current-line').first().waitFor();
    await page.locator('[id="status.editor.selection"]', { hasText: 'Ln 21' }).waitFor();
  });

  await step('the cards can be read in a dark theme', async () => {
    const heading = cards.locator('#cover h1');
    await theme('Dark Modern', '.vs-dark');
    const [colour, ground] = await heading.evaluate((node) => {
      const grounds = [];
      for (let one = node; one !== null; one = one.parentElement) {
        grounds.push(getComputedStyle(one).backgroundColor);
      }
      return [getComputedStyle(node).color, grounds.find((each) => !/, 0\)$|transparent/.test(each)) ?? ''];
    });
    const [red] = /\d+/.exec(colour);
    assert.ok(Number(red) < 80, `the letters are ${colour} on ${ground}`);
    assert.match(ground, /255, 255, 255/);
    await page.screenshot({ path: join(pictures, 'dark.png') });
    await theme('Light Modern', '.vs');
  });

  await step('the cards change with the text, and say when they are out of date', async () => {
    await focusText();
    await goTo('4:26');
    await page.keyboard.type('Overhaul: ');
    await cards.locator('#cover h1', { hasText: 'Overhaul' }).waitFor();
    await goTo(19);
    await page.keyboard.press('Control+Shift+K');
    await cards.locator('[role="status"]', { hasText: 'As it was before the last change' }).waitFor();
    await command('File: Revert File');
    await told(clean);
  });

  await step('the refit stands in the order that was worked out', async () => {
    const tree = page.locator('.pane', { has: page.locator('.pane-header', { hasText: 'Refit Order' }) });
    if ((await tree.locator('.pane-header').getAttribute('aria-expanded')) === 'false') {
      await tree.locator('.pane-header').click();
    }
    await tree.locator('.monaco-list-row', { hasText: 'Fit the new rotary pump' }).waitFor();
  });

  await step('the cards show the arguments and the options that are chosen', async () => {
    await open('pillar-trim.proc');
    await cards.locator('#cover h1', { hasText: 'Take the front left trim off' }).waitFor();
    await cards.getByLabel('Arguments:').selectOption('rear, right');
    await cards.locator('#cover h1', { hasText: 'Take the rear right trim off' }).waitFor();
    const machine = cards.getByLabel('Machine:');
    assert.doesNotMatch(await cards.locator('#cover').innerText(), /with radio/);
    await machine.focus();
    await page.keyboard.press('End');
    await cards.locator('#cover', { hasText: 'with radio' }).waitFor();
    await cards.locator('#cover h1', { hasText: 'Take the rear right trim off' }).waitFor();
    await focusText();
    await command('View: Close Editor');
    await told(clean);
  });

  await step('what only some machines lack is added under a condition', async () => {
    await open('headliner-out.proc');
    await told(clean);
    await goTo(17);
    for (let line = 17; line <= 20; line++) {
      await page.keyboard.press('Control+Shift+K');
    }
    await told(/Checked: 1 error/);
    await goTo('17:8');
    const fix = page.locator('.action-widget .monaco-list-row', { hasText: '(when radio)' }).first();
    await pressUntil('Control+.', fix);
    await page.screenshot({ path: join(pictures, 'fix-under-a-condition.png') });
    await fix.click();
    await page.locator('.view-line', { hasText: /^\s*when\s+radio\s+\{/ }).waitFor();
    await told(clean);
    await command('File: Revert File');
    await command('View: Close Editor');
  });

  await step('each sentence is offered once, and its places have what fits there', async () => {
    await goTo(21);
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+Space');
    const offers = page.locator('.suggest-widget.visible .monaco-list-row');
    await offers.first().waitFor();
    const labels = await offers.locator('.label-name').allInnerTexts();
    assert.ok(labels.length > 5);
    assert.deepEqual(labels, [...new Set(labels)]);
    await page.keyboard.type('meas');
    await offers.filter({ hasText: /^measure/ }).first().waitFor();
    await page.keyboard.press('Enter');
    await page.locator('.view-line', { hasText: /measure\s"what"\swith\smultimeter\sexpect/ }).waitFor();
    await page.keyboard.type('undo the');
    await page.waitForTimeout(1000);
    assert.equal(await offers.count(), 0, 'nothing is offered within a text');
    await page.keyboard.press('Tab');
    await page.locator('.view-line', { hasText: /measure\s"undo\sthe"\swith\smultimeter/ }).waitFor();
    await command('File: Revert File');
    await told(clean);
  });

  await step('the cards panel prints in a browser', async () => {
    await goTo(10);
    await command('ProcScript: Show the Cards Beside the Text');
    await cards.locator('#cover h1', { hasText: 'Replace the rotary pump' }).waitFor();
    const opened = page.context().waitForEvent('page');
    await cards.locator('[data-do="print-filled"]').click();
    await cards.locator('[role="status"]', { hasText: 'Print them there' }).waitFor();
    const printable = await opened;
    await printable.locator('#cover h1', { hasText: 'Replace the rotary pump' }).waitFor();
    assert.ok((await printable.pdf()).length > 10_000);
    await printable.close();
  });

  await step('the record of the cards panel is cleared when it is pressed twice', async () => {
    const tick = cards.locator('.step input[type="checkbox"]').first();
    await tick.scrollIntoViewIfNeeded();
    await tick.click();
    const begin = cards.locator('dialog [data-do="start"]');
    if (await begin.isVisible()) {
      await begin.click();
    }
    if (!(await tick.isChecked())) {
      await tick.click();
    }
    assert.ok(await tick.isChecked());
    await cards.locator('[data-do="clear"]').click();
    await cards.locator('[role="status"]', { hasText: 'Press once more' }).waitFor();
    assert.ok(await tick.isChecked(), 'once is not enough');
    await cards.locator('[data-do="clear"]').click();
    await page.waitForTimeout(500);
    assert.ok(!(await tick.isChecked()));
    await focusText();
  });

  await step('the task builds the cards', async () => {
    await command('ProcScript: Build the Cards');
    await page.locator('.xterm-rows', { hasText: /\d+ packs written/ }).waitFor();
    await page.locator('.explorer-folders-view .monaco-list-row', { hasText: 'packs' }).waitFor();
  });

  await step('cards that are built open in a browser', async () => {
    await page.locator('.notification-toast .monaco-button', { hasText: 'Open in a Browser' }).click();
    // A long list has only those rows that are seen.
    await page.locator('.quick-input-box input').fill('replace_pump');
    const opened = page.context().waitForEvent('page');
    await page.locator('.quick-input-list .monaco-list-row', { hasText: 'replace_pump' }).first().click();
    const built = await opened;
    await built.locator('#cover h1', { hasText: 'Replace the rotary pump' }).waitFor();
    await built.close();
  });

  await step('a name changes in every file that has it', async () => {
    await goTo('20:12');
    const box = page.locator('.rename-input');
    await pressUntil('F2', box);
    await box.fill('clamp_ring');
    await page.keyboard.press('Enter');
    await page.locator('.view-line', { hasText: 'undo clamp_ring' }).waitFor();
    await open('velmarra-v2/machine.proc');
    const search = page.locator('.find-widget.visible textarea').first();
    await pressUntil('Control+F', search);
    await search.fill('as clamp_ring');
    await page.locator('.find-widget .matchesCount', { hasText: '1 of 1' }).waitFor();
    await page.keyboard.press('Escape');
    await told(clean);
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
    await told(clean);
  });

  await step('a program that is not there is told in one sentence, with what to do', async () => {
    editor.use('/no/such/procscript');
    const said = page.locator('.notification-toast', { hasText: "'/no/such/procscript' did not start: the setting 'procscript.path' names it." });
    await said.waitFor();
    await told(/did not start/);
    await said.locator('.monaco-button', { hasText: 'How to get it' }).click();
    await page.locator('.gettingStartedContainer', { hasText: 'Write your first procedure' }).waitFor();
  });

  await step('a program of another version is told', async () => {
    editor.useOtherVersion();
    await page.locator('.notification-toast', { hasText: /The program is of version 9\S+ and the extension of 0/ }).waitFor();
    editor.use(program);
    await told(/Checked/);
  });
} finally {
  await editor.stop();
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
