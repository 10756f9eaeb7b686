// From the cursor to the step and back, and the page that shows the cards.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { load } from './sources.mjs';

const { stepAt, stepsOf, rootOf } = await load('plan.ts');
const { nameAt, procedureAt } = await load('procedureAt.ts');
const { isSame, wordsOf } = await load('choice.ts');
const { previewPage, emptyPage } = await load('previewPage.ts');

const step = (number, path, line) => ({ number, text: '', torque: '', because: '', source: { path, line, column: 1 } });
const plan = {
  strip: [{ title: 'A', steps: [step(1, 'press/wheel.proc', 5), step(2, 'press/wheel.proc', 8)] }],
  work: { title: 'Work', steps: [step(3, 'press/wheel.proc', 12)] },
  refit: [{ title: 'B', steps: [step(4, 'press/wheel.proc', 8), step(5, 'press/press.proc', 3)] }],
};
const file = '/library/press/wheel.proc';

test('the steps come in the order of the pack', () => {
  assert.deepEqual(
    stepsOf(plan).map(({ number }) => number),
    [1, 2, 3, 4, 5],
  );
  assert.equal(stepsOf({ ...plan, work: null }).length, 4);
});

test('the cursor means the step of its line, or of the nearest line above', () => {
  const at = (line, path = file) => stepAt(stepsOf(plan), path, line)?.number;
  assert.equal(at(4), undefined);
  assert.equal(at(5), 1);
  assert.equal(at(7), 1);
  assert.equal(at(8), 2, 'the strip comes before the refit');
  assert.equal(at(99), 3);
  assert.equal(at(99, '/library/press/press.proc'), 5);
  assert.equal(at(99, '/library/other/wheel.proc'), undefined);
});

test('a file that steps come from tells the root of the library', () => {
  assert.equal(rootOf(stepsOf(plan), file), '/library');
  assert.equal(rootOf(stepsOf(plan), '/elsewhere/a.proc'), undefined);
});

test('the procedure at a line is the one around it, or the first below', () => {
  const lines = ['use "a.proc"', '', 'procedure one on m {', '}', '  procedure two(side in left, right) on m {', '}'];
  assert.deepEqual(
    lines.map((_, line) => procedureAt(lines, line)),
    [2, 2, 2, 2, 4, 4],
  );
  assert.equal(procedureAt(['machine m { }', '// procedure none'], 1), undefined);
});

const pack = `<!doctype html><head><meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'sha256-x'; base-uri 'none'"></head><body><p>Card</p></body>`;

const none = { names: [{ arguments: '', machine: 'no options', isProven: true }], shown: 0 };

test('the page keeps the policy of the pack and lets in one more script', () => {
  const page = previewPage(pack, 'abc', none);
  assert.match(page, /default-src 'none'; script-src 'nonce-abc' 'sha256-x'; base-uri 'none'/);
  assert.equal([...page.matchAll(/<script/g)].length, 1);
  assert.match(page, /<p>Card<\/p><script nonce="abc">[^]+<\/script><\/body>$/);
});

test('a page without a policy is refused', () => {
  assert.throws(() => previewPage('<body></body>', 'abc', none));
});

test('the choices come along as data, whatever is in them', () => {
  const page = previewPage(pack, 'abc', { names: [{ arguments: '</script><b>', machine: '', isProven: true }], shown: 0 });
  assert.match(page, /\{"names":\[\{"arguments":"\\u003c\/script>\\u003cb>",.*\],"shown":0\}\)<\/script>/);
});

test('a choice is told by its arguments and options', () => {
  const told = (job, options, isProven) => Object.values(wordsOf({ job, options, isProven }));
  assert.deepEqual(told('leg_out-left', ['rail', 'roof'], true), ['left', 'with rail, roof', true]);
  assert.deepEqual(told('leg_out-left-front', [], false), ['left, front', 'no options', false]);
  assert.deepEqual(told('leg_out', ['rail'], true), ['', 'with rail', true]);
});

test('choices are the same whatever the order of their options', () => {
  assert.ok(isSame({ job: 'a', options: ['b', 'c'] }, { job: 'a', options: ['c', 'b'] }));
  assert.ok(!isSame({ job: 'a', options: ['b'] }, { job: 'a', options: [] }));
  assert.ok(!isSame({ job: 'a-left', options: [] }, { job: 'a-right', options: [] }));
});

test('a line that begins a procedure tells its name', () => {
  assert.equal(nameAt(['procedure one on m {', 'goal'], 0), 'one');
  assert.equal(nameAt(['procedure one on m {', 'goal'], 1), undefined);
  assert.equal(nameAt([], 3), undefined);
});

test('a reason is text, not markup', () => {
  assert.match(emptyPage('<b>&'), /<p>&lt;b>&amp;<\/p>/);
});
