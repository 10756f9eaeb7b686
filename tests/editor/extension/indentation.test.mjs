// The editor's indentation rules, line by line over the demo library: what they say is how it is laid out.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';

const root = new URL('../../../', import.meta.url);
const { indentationRules } = JSON.parse(readFileSync(new URL('src/vscode/assets/language-configuration.json', root), 'utf8'));
const increase = new RegExp(indentationRules.increaseIndentPattern);
const decrease = new RegExp(indentationRules.decreaseIndentPattern);
const library = readdirSync(new URL('procedures/', root), { recursive: true }).filter((path) => path.endsWith('.proc'));

for (const path of library) {
  test(`procedures/${path} is laid out as the rules say`, () => {
    const lines = readFileSync(new URL(`procedures/${path}`, root), 'utf8').split('\n');
    let depth = 0;
    let unfinished = false;
    lines.forEach((line, index) => {
      if (line.trim() === '') {
        return;
      }
      depth -= decrease.test(line) ? 1 : 0;
      // A sentence that goes on from the line before may stand deeper.
      const goesOn = /^\s*(needs|before|after|at|expect|while|because)\b/.test(line) && (unfinished || !/[{}]\s*$/.test(lines[index - 1]));
      const deeper = goesOn && line.startsWith(' '.repeat(depth * 2 + 2));
      assert.equal(/^ */.exec(line)[0].length, (deeper ? depth + 1 : depth) * 2, `line ${index + 1}: ${line}`);
      unfinished = deeper;
      depth += increase.test(line.trim()) ? 1 : 0;
    });
    assert.equal(depth, 0);
  });
}

test('a brace in a text or a comment opens nothing', () => {
  for (const line of ['part door "{side} door"', '// a { in a comment', 'stage "Make safe" { isolate mains }', 'how "Mind the { here."']) {
    assert.equal(increase.test(line), false, line);
  }
  assert.equal(increase.test('part door[side] "{side} door" {'), true);
});
