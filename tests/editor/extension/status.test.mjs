// The status never tells of success without a running server that has judged what is shown.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { load } from './sources.mjs';

const { statusOf, patience } = await load('status.ts');
const { CheckTracker } = await load('checkTracker.ts');

const calm = { server: { kind: 'running' }, waitingSince: undefined, errors: 0, warnings: 0, hints: 0, now: 50_000 };

test('a running server that has judged everything is told as checked', () => {
  assert.equal(statusOf(calm).state, 'checked');
  assert.equal(statusOf({ ...calm, errors: 2, warnings: 1, hints: 4 }).state, 'checked');
  assert.match(statusOf({ ...calm, errors: 2, warnings: 1, hints: 4 }).text, /error.*3$/);
  assert.match(statusOf({ ...calm, warnings: 1 }).text, /warning.*1$/);
});

test('hints alone are no reason to warn, and are told', () => {
  const status = statusOf({ ...calm, hints: 3 });
  assert.match(status.text, /check\) ProcScript$/);
  assert.match(status.tooltip, /no errors or warnings, 3 hints/);
});

for (const server of [{ kind: 'starting' }, { kind: 'stopped' }, { kind: 'failed', reason: 'gone' }]) {
  for (const waitingSince of [undefined, 49_999, 1]) {
    test(`a server that is ${server.kind} is never told as checked, waiting since ${waitingSince}`, () => {
      const status = statusOf({ ...calm, server, waitingSince });
      assert.equal(status.state, server.kind === 'starting' ? 'working' : 'failed');
      assert.doesNotMatch(status.text, /check\)/);
    });
  }
}

test('a running server works until it has answered, and has failed when it stays silent', () => {
  const at = (silence) => statusOf({ ...calm, waitingSince: calm.now - silence }).state;
  assert.equal(at(0), 'working');
  assert.equal(at(patience - 1), 'working');
  assert.equal(at(patience), 'failed');
});

test('an answer about an older version settles nothing', () => {
  const tracker = new CheckTracker();
  tracker.expect('a', 1, 100);
  tracker.expect('a', 2, 200);
  tracker.answered('a', 1);
  assert.equal(tracker.waitingSince, 100);
  tracker.answered('a', 2);
  assert.equal(tracker.waitingSince, undefined);
});

test('the oldest question counts, and a hidden text asks none', () => {
  const tracker = new CheckTracker();
  tracker.expect('a', 1, 100);
  tracker.expect('b', 1, 200);
  assert.equal(tracker.waitingSince, 100);
  tracker.hidden('a');
  assert.equal(tracker.waitingSince, 200);
});

test('a text that comes back unchanged is judged, unless it was closed or the server began anew', () => {
  const tracker = new CheckTracker();
  const back = () => {
    tracker.expect('a', 1, 300);
    return tracker.waitingSince;
  };
  assert.equal(back(), 300);
  tracker.answered('a', 1);
  assert.equal(back(), undefined);
  tracker.closed('a');
  assert.equal(back(), 300);
  tracker.answered('a', 1);
  tracker.reset();
  assert.equal(back(), 300);
});
