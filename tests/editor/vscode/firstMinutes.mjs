// The first ten minutes of somebody who has never seen the language, in a real VS Code: from an empty folder to cards that are proven and
// printed. Leaves a picture of each step in FOLDER, with the time that it took, and fails where the cards are not ready in ten minutes.
//
//   CODE_SERVER=CODE_SERVER_FOLDER node tests/editor/vscode/firstMinutes.mjs FOLDER
//
// What it needs otherwise run.mjs says. PACE is the speed of the hands in words a minute, 40 if nothing is said; faster is for trying out,
// and tells nothing of the time.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { built, startEditor } from './editor.mjs';
import { handsOn } from './hands.mjs';

const [pictures] = process.argv.slice(2);
const installed = process.env.CODE_SERVER;
if (pictures === undefined || installed === undefined) {
  process.stderr.write('usage: CODE_SERVER=FOLDER node tests/editor/vscode/firstMinutes.mjs PICTURES\n');
  process.exit(2);
}
mkdirSync(pictures, { recursive: true });

const usual = 40;
const pace = Number(process.env.PACE ?? usual);
/** A word counts five letters; so long is one, in milliseconds. */
const letter = 60_000 / (pace * 5);
/** Somebody reads 200 words in a minute, and faster where everything is tried out faster. */
const readWord = (60_000 / 200) * (usual / pace);

const editor = await startEditor({
  installed,
  program: process.env.PROCSCRIPT ?? built,
  browser: process.env.CHROMIUM ?? '/usr/bin/chromium',
  empty: true,
});
const { page, library } = editor;
const hands = handsOn(page, pictures);
const { command, told, pressUntil } = hands;
const times = [];
let number = 10;

const suggestions = page.locator('.suggest-widget.visible .monaco-list-row');
const answered = 'Answered at the machine: take this question out';

// The clock starts when the editor has read what is installed.
const newMachine = page.locator('.quick-input-list .monaco-list-row', { hasText: 'ProcScript: New Machine' }).first();
for (let known = false; !known; ) {
  await page.keyboard.press('F1');
  await page.locator('.quick-input-box input').fill('>ProcScript: New Machine');
  known = await newMachine.waitFor({ timeout: 3000 }).then(
    () => true,
    () => false,
  );
  await page.keyboard.press('Escape');
}
const start = Date.now();

try {
  await step('new machine', async () => {
    await palette('new machine', 'ProcScript: New Machine');
    await page.locator('.quick-input-message', { hasText: 'What is the machine called?' }).waitFor();
    await type('Workshop fan');
    await page.keyboard.press('Enter');
    await page.locator('.tab[data-resource-name="workshop_fan.proc"]').waitFor();
    assert.deepEqual(readdirSync(library).sort(), ['procscript.json', 'workshop_fan.proc']);
    await read(60);
    await told(/Checked: no findings/);
  });

  await step('the head of the procedure', async () => {
    await page.keyboard.press('Enter');
    await accept('proc', 'procedure');
    await type('motor_new');
    await page.keyboard.press('Tab');
    await type('Replace the motor');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    // What is taken out of a list leads to the next place by itself.
    await choose('replace');
    await type('motor');
    await page.keyboard.press('Tab');
    await type('Make safe');
    await page.keyboard.press('Tab');
  });

  await step('making safe', async () => {
    await accept('iso', 'isolate');
    await type('mains');
    await outOfBlock();
  });

  await step('the guard', async () => {
    await accept('sta', 'stage');
    await type('Guard');
    await page.keyboard.press('Tab');
    await accept('un', 'undo');
    await type('6 m5x12 guard_bolts');
    await line();
    await accept('rem', 'remove');
    await type('guard');
    await outOfBlock();
  });

  await step('the motor', async () => {
    await accept('sta', 'stage');
    await type('Motor');
    await page.keyboard.press('Tab');
    await accept('unp', 'unplug');
    await type('motor_plug');
    await line();
    await accept('un', 'undo');
    await type('4 m6x20 motor_bolts');
    await line();
    await accept('rem', 'remove');
    await accept('mo', 'motor');
    await outOfBlock();
  });

  await step('the work and the check', async () => {
    await accept('wo', 'work');
    await accept('repl', 'replace');
    await accept('mo', 'motor');
    await outOfBlock();
    await accept('ref', 'refit');
    await accept('che', 'check');
    await type('The fan turns by hand.');
    await page.keyboard.press('Tab');
    await read(20);
  });

  await step('the draft', async () => {
    await nextProblem();
    await read(15);
    await fix('Draft: declare what the steps name');
    await page.locator('.view-line', { hasText: 'part guard' }).first().waitFor();
    await read(80);
  });

  await step('the question of the plug', async () => {
    await cursorBehind('connector motor_plug "motor plug"');
    await type(' { release "Press the tab. Pull the body.');
    await page.keyboard.press('End');
    await fix(answered);
  });

  await step('the question of the mains', async () => {
    await cursorBehind('draft: how is the mains');
    await read(25);
    await cursorBehind('isolate "Isolate the mains."');
    await instead('Isolate the mains.', 'Switch off. Pull the plug.');
    await line();
    await accept('lo', 'lock');
    await type('Keep the plug in sight.');
    await page.keyboard.press('Tab');
    await line();
    await accept('ver', 'verify');
    await type('Press the switch. Nothing moves.');
    await page.keyboard.press('Tab');
    await line();
    await accept('dan', 'danger');
    await type('Mains voltage kills. Only a qualified person opens the motor.');
    await page.keyboard.press('Tab');
    await cursorBehind('restore "Restore the mains."');
    await instead('Restore the mains.', 'Put the plug in.');
    await cursorBehind('draft: how is the mains');
    await fix(answered);
  });

  await step('the questions of what is in the way and what is live', async () => {
    for (const question of ['draft: is the motor behind', 'draft: is the motor plug on']) {
      await cursorBehind(question);
      await read(12);
      await fix(answered);
    }
  });

  await step('the bolts', async () => {
    await read(40);
    for (const [bolt, tool, torque] of [
      ['length 12 mm', 'socket_8', '5.5'],
      ['length 20 mm', 'socket_10', '9.5'],
    ]) {
      await cursorBehind(bolt);
      await type(' ');
      await accept('dri', 'drive');
      await type(`${tool} `);
      await page.keyboard.press('Escape');
      await accept('tor', 'torque');
      await type(torque);
      await page.keyboard.press('Tab');
      await cursorBehind(`drive ${tool}`);
      await fix(`Declare the tool \`${tool}\``);
    }
  });

  await step('the check', async () => {
    await told(/Checked: no (findings|errors or warnings)/);
    await page.locator('.codelens-decoration', { hasText: 'proven' }).first().waitFor();
    await read(10);
    await page.keyboard.press('Control+S');
    assert.doesNotMatch(await saved(), /\/\/ draft:/);
  });

  await step('the cards are built', async () => {
    await palette('build the cards', 'ProcScript: Build the Cards');
    await page.locator('.notification-toast', { hasText: 'The cards are built.' }).waitFor();
    assert.ok(existsSync(join(library, 'packs/motor_new/cards.html')));
    await read(10);
  });

  await step('the cards in a browser, and printed', async () => {
    const opened = page.context().waitForEvent('page');
    await page.locator('.notification-toast .monaco-button', { hasText: 'Open in a Browser' }).click();
    const cards = await opened;
    await cards.locator('#cover h1', { hasText: 'Replace the motor' }).waitFor();
    await read(60);
    await cards.screenshot({ path: join(pictures, 'cards.png'), fullPage: true });
    const printed = join(pictures, 'cards.pdf');
    await cards.pdf({ path: printed, preferCSSPageSize: true });
    const words = execFileSync('pdftotext', ['-layout', printed, '-'], { encoding: 'utf8' });
    assert.match(words, /Replace the motor/);
    assert.match(words, /Keep the plug in sight/);
    assert.match(words, /Put the plug in/);
    assert.doesNotMatch(words, /DRAFT/);
  });

  const seconds = Math.round((Date.now() - start) / 1000);
  process.stdout.write(`from an empty folder to printed cards in ${Math.floor(seconds / 60)} min ${seconds % 60} s, at ${pace} words a minute\n`);
  assert.ok(pace !== usual || seconds < 600, 'it took longer than ten minutes');
} finally {
  writeFileSync(join(pictures, 'times.txt'), `${times.map(([name, seconds]) => `${seconds.toFixed(0).padStart(5)} s  ${name}`).join('\n')}\n`);
  await editor.stop();
}

/** A step, with the time that it took. */
async function step(name, act) {
  const begun = Date.now();
  try {
    await hands.step(`${number++} ${name}`, act);
  } finally {
    times.push([name, (Date.now() - begun) / 1000]);
  }
}

/** Finds a command by some of its words. */
async function palette(words, title) {
  await page.keyboard.press('F1');
  await page.locator('.quick-input-box input').waitFor();
  await type(words);
  const row = page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first();
  await row.waitFor();
  await read(3);
  await row.click();
}

/** Saves the text, and reads what is on the disk then. */
async function saved() {
  const file = join(library, 'workshop_fan.proc');
  await page.keyboard.press('Control+S');
  await page.locator('.tab.dirty').waitFor({ state: 'detached' });
  return readFileSync(file, 'utf8');
}

async function nextProblem() {
  await command('Go to Next Problem in Files');
  await page.keyboard.press('Escape');
}

/** Takes a quick fix where the cursor is. */
async function fix(title) {
  const row = page.locator('.action-widget .monaco-list-row', { hasText: title }).first();
  await pressUntil('Control+.', row);
  await read(8);
  await row.click();
  await row.waitFor({ state: 'detached' });
  await page.waitForTimeout(300);
}

/** Puts the cursor behind some words of the text, as one would with the mouse. */
async function cursorBehind(words) {
  const text = await saved();
  const at = text.indexOf(words);
  assert.ok(at >= 0, `'${words}' does not stand in\n${text}`);
  const before = text.slice(0, at + words.length).split('\n');
  await hands.goTo(`${before.length}:${before.at(-1).length + 1}`);
  await read(4);
}

/** Writes another text between the quotes that the cursor stands behind. */
async function instead(old, text) {
  await page.keyboard.press('ArrowLeft');
  for (let letters = 0; letters < old.length; letters++) {
    await page.keyboard.press('Shift+ArrowLeft');
  }
  await type(text);
  await page.keyboard.press('End');
}

async function type(text) {
  await page.keyboard.type(text, { delay: letter });
}

/** Looks at so many words. */
async function read(words) {
  await page.waitForTimeout(words * readWord);
}

/** Types the first letters of a word, looks what is offered, and takes it once it is the one that is marked. */
async function accept(letters, word) {
  await type(letters);
  await choose(word);
}

/** Takes a word out of what is offered. */
async function choose(word) {
  const row = suggestions.filter({ has: page.locator('.label-name', { hasText: new RegExp(`^${word}$`) }) }).first();
  await row.waitFor({ timeout: 15_000 });
  await read(3);
  for (let key = 0; key < 12 && !(await row.getAttribute('class')).includes('focused'); key++) {
    await page.keyboard.press('ArrowDown');
    await page.waitForTimeout(letter);
  }
  await page.keyboard.press('Enter');
}

/** Begins another line, with what is offered put away. */
async function line() {
  await page.keyboard.press('Escape');
  await page.keyboard.press('Enter');
}

/** Goes on behind the block that one is in. */
async function outOfBlock() {
  await page.keyboard.press('Escape');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
}
