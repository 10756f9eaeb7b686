// The page of the preview in a real browser, framed as the editor frames it: without leave to print or to ask. Its packs are made by the program.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { load } from './sources.mjs';

const { previewPage } = await load('previewPage.ts');
const { RecordKeeper } = await load('records.ts');
const { chromium } = createRequire(new URL('../../../src/vscode/package.json', import.meta.url))('playwright-core');
const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
const program = process.env.PROCSCRIPT ?? fileURLToPath(new URL('../../../src/ProcScript.Cli/bin/Debug/net10.0/procscript', import.meta.url));
const skip = !existsSync(executablePath) ? 'there is no Chromium' : existsSync(program) ? false : 'the program is not built';

const source = `
tool driver "driver"
fastener screw "M4 screw" { tool driver }
clip cap "cap" { tool driver }
machine mixer "mixer" {
  control knob "speed knob" { low, high }
  part lid "lid" { held by 2 screw as lid_screws }
  part bowl "bowl" { behind lid  held by 1 screw as bowl_screw }
  part shaft "drive shaft" { behind bowl  held by 1 cap as shaft_cap }
}
procedure shaft_out "Take the shaft out" on mixer {
  goal remove shaft
  stage "Lid" {
    set knob to high
    undo lid_screws
    remove lid
  }
  stage "Bowl" {
    undo bowl_screw
    remove bowl
  }
  stage "Shaft" {
    release shaft_cap
    remove shaft
  }
}
`;

let folder;
let browser;
let page;
const packs = new Map();

before(async () => {
  if (!skip) {
    folder = mkdtempSync(join(tmpdir(), 'procscript-pages-'));
    browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
    page = await browser.newPage({ viewport: { width: 320, height: 700 } });
  }
});

after(async () => {
  await browser?.close();
  if (folder !== undefined) {
    rmSync(folder, { recursive: true, force: true });
  }
});

/** The pack of the sample after some changes of its text. */
function packOf(...changes) {
  const text = changes.reduce((now, [from, to]) => {
    assert.ok(now.includes(from), from);
    return now.replace(from, to);
  }, source);
  if (!packs.has(text)) {
    writeFileSync(join(folder, 'mixer.proc'), text);
    execFileSync(program, ['build', '.', '-o', 'packs'], { cwd: folder, stdio: 'pipe' });
    packs.set(text, readFileSync(join(folder, 'packs/shaft_out/cards.html'), 'utf8'));
  }
  return packs.get(text);
}

const nothing = { records: [], current: undefined };

/** Shows a pack as the editor would. */
async function open(pack, { shown = 'cards', kept = nothing } = {}) {
  const choices = { names: [{ arguments: '', machine: 'no options', isProven: true }], shown: 0 };
  // What the editor puts in comes before the policy of the pack, which holds for all else.
  const api = '<script>globalThis.acquireVsCodeApi = () => ({ postMessage: (message) => parent.postMessage(message, "*") });</script>';
  const html = previewPage(pack, 'abc', { ...choices, page: shown, kept }).replace('<head>', `<head>${api}`);
  await page.setContent(`<style>body { margin: 0 } iframe { display: block; border: 0; width: 100%; height: 100vh }</style>
    <iframe sandbox="allow-scripts"></iframe><script>
      globalThis.heard = [];
      addEventListener('message', ({ data }) => heard.push(data));
    </script>`);
  await page.locator('iframe').evaluate((frame, text) => {
    frame.srcdoc = text;
  }, html);
  await page.waitForFunction(() => globalThis.heard.some(({ kind }) => kind === 'ready'));
  return page.frameLocator('iframe');
}

const heard = () => page.evaluate(() => globalThis.heard);
const say = (message) => page.evaluate((data) => document.querySelector('iframe').contentWindow.postMessage(data, '*'), message);
const tick = (frame, number) => frame.locator(`#step-${number} input.main`).click();

/** The numbers of the steps that are ticked, with their words. */
const ticked = (frame) =>
  frame
    .locator('body')
    .evaluate(() =>
      [...document.querySelectorAll('input.main:checked')].map((box) => {
        const step = box.closest('.step');
        return `${step.querySelector('.no').textContent.trim()} ${step.querySelector('.act').textContent.trim()}`;
      }),
    );

/** What the extension keeps of what a page has told. */
async function kept() {
  const lying = new Map();
  const keeper = new RecordKeeper({ get: (key) => lying.get(key), update: (key, value) => lying.set(key, value) });
  for (const message of await heard()) {
    if (['record', 'forget', 'current'].includes(message.kind)) {
      keeper.hear('job', message);
    }
  }
  return keeper.of('job');
}

test('print opens the browser, and what has to be sure is pressed twice', { skip }, async () => {
  const frame = await open(packOf());
  await tick(frame, 2);
  await frame.getByRole('button', { name: 'Record' }).click();
  await frame.locator('[data-do=print-filled]').click();
  const note = frame.locator('.panel.told');
  assert.match(await note.textContent(), /open in your browser/);
  assert.ok((await heard()).some(({ kind }) => kind === 'print'));
  await frame.locator('[data-do=clear]').click();
  assert.match(await note.textContent(), /Press once more to go on\.$/);
  assert.equal((await ticked(frame)).length, 1);
  await frame.locator('[data-do=clear]').click();
  assert.ok(await note.isHidden());
  assert.deepEqual(await ticked(frame), []);
});

test('the steps of the cursor are marked and come into sight, and a step tells that it is selected', { skip }, async () => {
  const frame = await open(packOf());
  await say({ kind: 'reveal', steps: [3, 12], scroll: true, origins: [{ text: 'Step 2: mixer.proc line 15', number: 2, call: -1 }, { text: 'done at a.proc line 3', number: 2, call: 0 }], other: 'bowl_out' });
  await frame.locator('#step-3[style*=outline]').waitFor();
  assert.equal(await frame.locator('[style*="outline: solid"], [style*="outline: 3px"]').count(), 4, 'both steps, and the lid on the map, drawn and in its table');
  const box = await frame.locator('#step-3').boundingBox();
  assert.ok(box.y >= 0 && box.y + box.height <= 700, JSON.stringify(box));

  await frame.getByRole('button', { name: 'done at a.proc line 3' }).click();
  await frame.getByRole('button', { name: 'Show the cards of bowl_out' }).click();
  await frame.locator('#step-4 .act').click();
  assert.deepEqual(
    (await heard()).filter(({ kind }) => ['place', 'other', 'step'].includes(kind)),
    [{ kind: 'place', number: 2, call: 0 }, { kind: 'other' }, { kind: 'step', number: 4 }],
  );

  await say({ kind: 'reveal', steps: [], scroll: true, origins: [], other: '' });
  await frame.locator('#cover[style*=outline]').waitFor();
  assert.ok(await frame.locator('.panel.origins').isHidden());
});

test('refit, map and bags are shown alone, and their links lead to the cards and back', { skip }, async () => {
  const frame = await open(packOf(), { shown: 'refit' });
  assert.ok(await frame.locator('#cover').isHidden());
  await frame.locator('.refit .step').first().getByRole('link').first().click();
  const strip = frame.locator('.strip .step[style*=outline]');
  await strip.waitFor();
  assert.equal(await frame.locator('html').getAttribute('data-show'), 'cards', 'a step of the strip is on the cards');
  await frame.getByRole('button', { name: 'Back' }).click();
  assert.ok(await strip.isHidden());

  await page.setViewportSize({ width: 700, height: 700 });
  await frame.getByRole('button', { name: 'Map' }).click();
  const part = frame.locator('svg a', { hasText: 'bowl' });
  const leads = await part.getAttribute('href');
  await part.click();
  await frame.locator(`${leads}[style*=outline]`).waitFor();
  assert.match(await frame.locator(leads).textContent(), /Remove the bowl/);
  await page.setViewportSize({ width: 320, height: 700 });

  await frame.locator('.strip .step .bag a').first().click();
  await frame.locator('.label[style*=outline]').waitFor();
  await frame.getByRole('button', { name: 'Bags' }).click();
  assert.ok(await frame.locator('#step-1').isHidden());
  await frame.locator('.label a').first().click();
  assert.equal(await frame.locator('.step[style*=outline]').count(), 1);
  assert.deepEqual((await heard()).flatMap(({ kind, page: name }) => (kind === 'page' ? name : [])), ['map', 'bags']);
  assert.equal(await frame.locator('body').evaluate(() => location.href), 'about:srcdoc');
});

test('ticks and readings stay with their steps when the text changes around them', { skip }, async () => {
  const frame = await open(packOf());
  for (const number of [2, 3, 4]) {
    await tick(frame, number);
  }
  await frame.getByRole('button', { name: 'Record' }).click();
  await frame.locator('[data-field=serial]').first().fill('K-7');
  const words = (await ticked(frame)).map((step) => step.replace(/^\d+ /, ''));
  assert.deepEqual(words, ['Undo M4 screw lid', 'Remove the lid', 'Undo M4 screw bowl']);
  const records = await kept();
  assert.equal(records.records.length, 1);

  const shifted = await open(packOf(['    undo lid_screws', '    set knob to low\n    set knob to high\n    undo lid_screws']), { kept: records });
  assert.deepEqual(await ticked(shifted), [`4 ${words[0]}`, `5 ${words[1]}`, `6 ${words[2]}`]);
  assert.equal(await shifted.locator('[data-field=serial]').first().inputValue(), 'K-7');
  assert.match(await shifted.locator('.bar .count').textContent(), /^3 of /);
  assert.ok(await shifted.locator('.record').isHidden(), 'nobody is asked');
});

test('a tick goes where its step says something else, and comes back with it', { skip }, async () => {
  const frame = await open(packOf());
  await tick(frame, 4);
  await tick(frame, 5);
  const both = await ticked(frame);
  const records = await kept();
  const changed = await open(packOf(['undo bowl_screw', 'undo bowl_screw { how "Hold the bowl." }']), { kept: records });
  assert.deepEqual(await ticked(changed), both.slice(1));
  await tick(changed, 6);
  const later = await kept();
  assert.equal(later.records[0].id, records.records[0].id, 'the same record goes on');
  // The edit is taken back.
  const again = await open(packOf(), { kept: { ...later, current: records.current } });
  assert.deepEqual(await ticked(again), [...both, '6 Release cap drive shaft']);
});

test('of steps in the same words none takes the tick of another', { skip }, async () => {
  const twice = ['    undo lid_screws\n', '    set knob to low\n    set knob to high\n    undo lid_screws\n    set knob to low\n    set knob to high\n'];
  const frame = await open(packOf(twice));
  await frame.locator('.step .act', { hasText: /to .?high/i }).first().waitFor();
  const high = frame.locator('.strip .step', { hasText: /high/ }).filter({ has: frame.locator('.act', { hasText: /high/ }) });
  const boxes = await high.locator('input.main').count();
  assert.equal(boxes, 3);
  await high.nth(1).locator('input.main').click();
  const records = await kept();
  // The first of them goes: the second, which was ticked, is the first now, between other steps than before.
  const fewer = await open(packOf(['    set knob to high\n', ''], ['    undo lid_screws\n', '    set knob to high\n    undo lid_screws\n    set knob to low\n    set knob to high\n']), { kept: records });
  const after = await ticked(fewer);
  assert.ok(after.length === 0, after.join('; '));
  // Without a change it stays where it was.
  const same = await open(packOf(twice), { kept: records });
  assert.deepEqual((await ticked(same)).map((words) => words.split(' ')[0]), ['3']);
});

test('nothing is cut and nothing scrolls sideways in a narrow panel', { skip }, async () => {
  for (const width of [300, 320, 400]) {
    await page.setViewportSize({ width, height: 700 });
    for (const shown of ['cards', 'refit', 'map', 'bags']) {
      const frame = await open(packOf(), { shown });
      await frame.getByRole('button', { name: 'Record' }).click();
      const wide = await frame.locator('body').evaluate((body) => {
        const width = globalThis.innerWidth;
        const isRead = (one) => one.closest('.hide, .skip, thead:not(.steps > thead), .steps > thead th, svg') === null && getComputedStyle(one).opacity !== '0' && one.clientWidth > 1;
        const cut = (one) => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).overflowX !== 'visible';
        return [document.documentElement.scrollWidth > width ? 'the page' : [], [...body.querySelectorAll('*')]
          .filter(isRead)
          .filter((one) => cut(one) || one.getBoundingClientRect().right > width + 0.5)
          .map((one) => one.outerHTML.slice(0, 120))].flat();
      });
      assert.deepEqual(wide, [], `${shown} at ${width}`);
    }
  }
  await page.setViewportSize({ width: 320, height: 700 });
});
