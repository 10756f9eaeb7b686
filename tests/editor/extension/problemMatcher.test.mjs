// The problem matcher, against what the program is known to print for every rule.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';

const root = new URL('../../../', import.meta.url);
const manifest = JSON.parse(readFileSync(new URL('src/vscode/package.json', root), 'utf8'));
const [matcher] = manifest.contributes.problemMatchers;
const [heading, place] = matcher.pattern.map((pattern) => ({ ...pattern, regexp: new RegExp(pattern.regexp) }));
const printed = readdirSync(new URL('tests/cases/', root), { recursive: true }).filter((path) => path.endsWith('findings.txt'));

test('every finding of every case is matched, with its place', () => {
  let matched = 0;
  for (const path of printed) {
    const lines = readFileSync(new URL(`tests/cases/${path}`, root), 'utf8').split('\n');
    const headings = lines.flatMap((line, index) => (/^(error|warning|hint) PRC/.test(line) ? [index] : []));
    for (const index of headings) {
      const first = heading.regexp.exec(lines[index]);
      const second = place.regexp.exec(lines[index + 1]);
      assert.ok(first && second, `${path}:${index + 1} is not matched`);
      assert.ok(['error', 'warning', 'hint'].includes(first[heading.severity]));
      assert.match(first[heading.code], /^PRC\d{4}$/);
      assert.notEqual(first[heading.message], '');
      assert.match(second[place.file], /\.proc$|^[^:]+$/);
      matched += second[place.line] === undefined ? 0 : 1;
    }
  }
  assert.ok(matched > 100, `${matched} findings with a place`);
});

test('other lines of the output are not taken for findings', () => {
  for (const line of ['checked 1 procedure in 1 file: all proven', '1 error in 1 file; 0 of 1 procedure proven', '   = help: undo it first']) {
    assert.equal(heading.regexp.test(line), false);
  }
});
