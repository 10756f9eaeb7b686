// From the cursor to the steps and back, and the page that shows the cards.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { load } from './sources.mjs';

const { addressed, isSource, moved, originOf, stretchAt } = await load('stepPlaces.ts');
const { originsOf } = await load('origins.ts');
const { headingOf, nameAt, procedureAround, procedureAt } = await load('procedureAt.ts');
const { isSame, wordsOf } = await load('choice.ts');
const { previewPage, emptyPage } = await load('previewPage.ts');
const { RecordKeeper } = await load('records.ts');

const at = (line, character = 0) => ({ line, character });
const stretch = (uri, first, last, steps, from = 0, to = 80) => ({ uri, range: { start: at(first, from), end: at(last, to) }, steps });
const point = (uri, line) => ({ uri, range: { start: at(line, 4), end: at(line, 4) } });
const places = {
  steps: [
    { number: 1, written: point('file:///l/wheel.proc', 5), calls: [] },
    { number: 2, written: point('file:///l/seat%20out.proc', 3), calls: [point('file:///l/wheel.proc', 8)] },
    { number: 3, written: point('file:///l/seat%20out.proc', 3), calls: [point('file:///l/wheel.proc', 8)] },
    { number: 4, written: point('file:///l/wheel.proc', 5), calls: [] },
  ],
  stretches: [
    stretch('file:///l/wheel.proc', 2, 20, []),
    stretch('file:///l/wheel.proc', 4, 6, [1, 4], 2),
    stretch('file:///l/wheel.proc', 5, 5, [1], 4, 12),
    stretch('file:///l/wheel.proc', 5, 5, [4], 14, 30),
    stretch('file:///l/wheel.proc', 8, 8, [2, 3], 2),
    stretch('file:///l/seat out.proc', 3, 3, [2, 3], 4),
  ],
};

test('the cursor means the innermost stretch', () => {
  const steps = (line, character = 0, uri = 'file:///l/wheel.proc') => stretchAt(places, uri, at(line, character))?.steps;
  assert.deepEqual(steps(5, 8), [1]);
  assert.deepEqual(steps(5, 20), [4], 'of two on one line the one that the cursor is in');
  assert.deepEqual(steps(5), [1], 'before the words of a line its first step');
  assert.deepEqual(steps(4, 10), [1, 4], 'the head of a stage means all of it');
  assert.deepEqual(steps(8), [2, 3], 'a do line all that it brings in');
  assert.deepEqual(steps(2), [], 'the head of the procedure the cover');
  assert.equal(steps(30), undefined);
  assert.deepEqual(steps(3, 0, 'file:///l/seat out.proc'), [2, 3]);
  assert.ok(isSource(places, 'file:///l/seat out.proc'));
  assert.ok(!isSource(places, 'file:///l/none.proc'));
});

test('a step leads to its line, and to the do lines that brought it in', () => {
  assert.equal(originOf(places, 4).written.range.start.line, 5);
  assert.deepEqual(originsOf(places, 2), [
    { text: 'Step 2: seat out.proc line 4', number: 2, call: -1 },
    { text: 'done at wheel.proc line 9', number: 2, call: 0 },
  ]);
  assert.deepEqual(originsOf(places, 9), []);
});

test('addresses are written as the editor writes them', () => {
  const own = addressed(places, (uri) => uri.replace('file://', 'vscode-remote://x'));
  assert.equal(own.stretches[0].uri, 'vscode-remote://x/l/wheel.proc');
  assert.equal(own.steps[1].written.uri, 'vscode-remote://x/l/seat%20out.proc');
  assert.equal(own.steps[1].calls[0].uri, 'vscode-remote://x/l/wheel.proc');
});

test('lines that come and go move what lies below them, and nothing in another text', () => {
  const lineOf5 = (...changes) => moved(places, 'file:///l/wheel.proc', changes).steps[0].written.range.start.line;
  const change = (first, from, last, to, text) => ({ range: { start: at(first, from), end: at(last, to) }, text });
  assert.equal(lineOf5(change(4, 10, 4, 10, '\n    // note')), 6);
  assert.equal(lineOf5(change(5, 0, 5, 0, 'one\ntwo\n')), 7, 'what is put before its first letter');
  assert.equal(lineOf5(change(5, 6, 5, 6, '\n')), 5, 'what is put into it');
  assert.equal(lineOf5(change(9, 0, 9, 0, '\n')), 5);
  assert.equal(lineOf5(change(3, 0, 5, 0, '')), 3, 'lines above taken out');
  assert.equal(lineOf5(change(3, 4, 6, 2, '')), 3, 'itself taken out');
  assert.equal(lineOf5(change(0, 0, 0, 0, '\n'), change(3, 0, 3, 0, '\n\n')), 8, 'two changes at once, in any order');
  assert.equal(lineOf5(change(3, 0, 3, 0, '\n\n'), change(0, 0, 0, 0, '\n')), 8);
  assert.equal(moved(places, 'file:///l/none.proc', [change(0, 0, 0, 0, '\n')]).steps[0].written.range.start.line, 5);
});

test('the procedure at a line is the one around it, or the nearest', () => {
  const lines = ['use "a.proc"', '', 'procedure one on m {', '  how "a } b" // }', '}', '', '  procedure two(side in left, right) on m {', '}', 'machine m {', '}'];
  assert.deepEqual(
    lines.map((_, line) => procedureAt(lines, line)),
    [2, 2, 2, 2, 2, 2, 6, 6, 6, 6],
  );
  assert.deepEqual(
    lines.map((_, line) => procedureAround(lines, line)),
    [undefined, undefined, 2, 2, 2, undefined, 6, 6, undefined, undefined],
  );
  assert.equal(procedureAround(['procedure one on m {', '  stage "A" {', '}', 'x'], 3), 0, 'while a brace is missing, all below');
  assert.equal(procedureAt(['machine m { }', '// procedure none'], 1), undefined);
  assert.equal(headingOf(lines, 'two'), 6);
  assert.equal(headingOf(lines, 'three'), undefined);
});

const pack = `<!doctype html><head><meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'sha256-x'; base-uri 'none'"></head><body><p>Card</p>
<script>pack()</script>
</body>`;

const none = {
  names: [{ arguments: '', machine: 'no options', isProven: true }],
  shown: 0,
  page: 'cards',
  kept: { records: [], current: undefined },
};

test('the page keeps the policy of the pack and lets in one more script, before its own', () => {
  const page = previewPage(pack, 'abc', none);
  assert.match(page, /default-src 'none'; script-src 'nonce-abc' 'sha256-x'; base-uri 'none'/);
  assert.equal([...page.matchAll(/<script/g)].length, 2);
  assert.match(page, /<p>Card<\/p>\n<script nonce="abc">[^]+<\/script><script>pack\(\)<\/script>\n<\/body>$/);
});

test('a page without a policy is refused', () => {
  assert.throws(() => previewPage('<body></body>', 'abc', none));
});

test('the choices and the records come along as data, whatever is in them', () => {
  const page = previewPage(pack, 'abc', {
    ...none,
    names: [{ arguments: '</script><b>', machine: '', isProven: true }],
    kept: { records: [{ id: '<script>', started: '', changed: '', filled: {} }], current: undefined },
  });
  assert.match(page, /\{"names":\[\{"arguments":"\\u003c\/script>\\u003cb>",.*\],"shown":0,.*"id":"\\u003cscript>"/);
});

test('records are kept by job, and go when they are forgotten', () => {
  const lying = new Map();
  const memory = { get: (key) => lying.get(key), update: (key, value) => (value === undefined ? lying.delete(key) : lying.set(key, value)) };
  const keeper = new RecordKeeper(memory);
  const record = (id, filled) => ({ kind: 'record', record: { id, started: 's', changed: 'c', filled } });
  keeper.hear('a', record('1', { lid: true }));
  keeper.hear('a', { kind: 'current', id: '1' });
  keeper.hear('a', record('2', {}));
  keeper.hear('a', record('1', { lid: true, bolt: true }));
  assert.deepEqual(keeper.of('a').records.map(({ id, filled }) => [id, Object.keys(filled)]), [['2', []], ['1', ['lid', 'bolt']]]);
  assert.equal(keeper.of('a').current, '1');
  assert.deepEqual(new RecordKeeper(memory).of('a'), keeper.of('a'), 'the next session finds them');
  assert.deepEqual(keeper.of('b'), { records: [], current: undefined });
  keeper.hear('a', { kind: 'forget', id: '1' });
  assert.equal(keeper.of('a').current, undefined);
  keeper.hear('a', { kind: 'forget', id: '2' });
  assert.equal(lying.size, 0);
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
