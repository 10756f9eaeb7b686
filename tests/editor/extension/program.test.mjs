// Which program is started, what is said where it does not start, and where it is of another version.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { load } from './sources.mjs';

const { chosenProgram, notStarted, mismatch } = await load('programChoice.ts');

test('the setting comes before what the extension brings, and that before the search path', () => {
  assert.deepEqual(chosenProgram(' /opt/procscript ', '/ext/bin/procscript'), { command: '/opt/procscript', from: 'setting' });
  assert.deepEqual(chosenProgram('', '/ext/bin/procscript'), { command: '/ext/bin/procscript', from: 'extension' });
  assert.deepEqual(chosenProgram('  ', undefined), { command: 'procscript', from: 'searchPath' });
});

test('a program that does not start is told in one sentence, by where it comes from', () => {
  const told = ['setting', 'extension', 'searchPath'].map((from) => notStarted({ command: '/opt/procscript', from }));
  assert.equal(new Set(told).size, 3);
  assert.match(told[0], /'\/opt\/procscript' did not start: the setting 'procscript\.path'/);
  for (const sentence of told) {
    assert.match(sentence, /^['T][^.]*(\.path'?)?[^.]*\.$/);
  }
});

test('versions are compared', () => {
  assert.equal(mismatch('0.1.0', '0.1.0'), undefined);
  assert.equal(mismatch(undefined, '0.1.0'), undefined);
  assert.match(mismatch('0.2.0', '0.1.0'), /program is of version 0\.2\.0 and the extension of 0\.1\.0/);
});
