// What somebody does in the editor: the keys, the palette, the files; and what the status says meanwhile.
import { join } from 'node:path';

/**
 * The hands on an editor's page.
 * @param page the page.
 * @param pictures the folder for a picture of each step.
 */
export function handsOn(page, pictures) {
  const status = page.locator('#procscript\\.procscript\\.procscript\\.status, [id*="procscript.status"]').first();

  /** Does a step, tells of it and takes a picture, also of what went wrong. */
  async function step(name, act) {
    const picture = join(pictures, `${name.replaceAll(/[^a-z\d]+/g, '-')}.png`);
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
    const name = file.slice(file.lastIndexOf('/') + 1);
    await page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().click();
    await page.locator(`.tab[data-resource-name="${name}"]`).waitFor();
  }

  /** Presses a key until it has its effect: one that comes while the editor moves the focus is lost. */
  async function pressUntil(key, effect) {
    for (let attempt = 0; attempt < 10; attempt++) {
      await page.keyboard.press(key);
      try {
        await effect.waitFor({ timeout: 5000 });
        return;
      } catch {
        await page.keyboard.press('Escape');
      }
    }
    throw new Error(`${key} has no effect.`);
  }

  async function focusText() {
    await command('View: Focus First Editor Group');
  }

  async function theme(name, mark) {
    await command('Preferences: Color Theme');
    await page.locator('.quick-input-box input').fill(name);
    await page.locator('.quick-input-list .monaco-list-row', { hasText: name }).first().click();
    await page.locator(`.monaco-workbench${mark}`).waitFor();
  }

  /** Moves the cursor to a line, or to LINE:COLUMN. */
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

  return { step, open, pressUntil, focusText, theme, goTo, command, told, status };
}
