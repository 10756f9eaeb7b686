// The script of the preview in a real page, framed as the editor frames it: without leave to print or to ask.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { load } from './sources.mjs';

const { previewPage } = await load('previewPage.ts');
const { chromium } = createRequire(new URL('../../../src/vscode/package.json', import.meta.url))('playwright-core');
const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';

const pack = `<!doctype html><html lang="en"><head><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline' 'self'"></head>
<body><button id="print">Print</button><button id="clear">Clear</button><p id="step-1">Step</p></body></html>`;

test('print opens the browser, and what has to be sure is pressed twice', { skip: existsSync(executablePath) ? false : 'there is no Chromium' }, async () => {
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage();
    const choices = { names: [{ arguments: '', machine: 'no options', isProven: true }], shown: 0 };
    const framed = previewPage(pack, 'abc', choices)
      .replace("'nonce-abc' ", '')
      .replace('<head>', '<head><script>globalThis.acquireVsCodeApi = () => ({ postMessage: (message) => parent.postMessage(message, "*") });</script>');
    await page.setContent(`<iframe sandbox="allow-scripts"></iframe><script>
      globalThis.heard = [];
      addEventListener('message', ({ data }) => heard.push(data.kind));
    </script>`);
    await page.locator('iframe').evaluate((frame, html) => {
      frame.srcdoc = html;
    }, framed);
    const frame = page.frameLocator('iframe');
    await frame.locator('#step-1').waitFor();
    await frame.locator('body').evaluate(() => {
      globalThis.cleared = 0;
      document.getElementById('print').onclick = () => window.print();
      document.getElementById('clear').onclick = () => {
        globalThis.cleared += window.confirm('Take out all ticks?') ? 1 : 0;
      };
    });
    const cleared = () => frame.locator('body').evaluate(() => globalThis.cleared);

    await frame.locator('#print').click();
    assert.match(await frame.locator('[role=status]').textContent(), /open in your browser/);
    await frame.locator('#clear').click();
    assert.equal(await cleared(), 0);
    assert.equal(await frame.locator('[role=status]').textContent(), 'Take out all ticks? Press once more to go on.');
    await frame.locator('#clear').click();
    assert.equal(await cleared(), 1);
    assert.ok(await frame.locator('[role=status]').isHidden());
    assert.deepEqual(await page.evaluate(() => globalThis.heard), ['ready', 'print']);
  } finally {
    await browser.close();
  }
});
