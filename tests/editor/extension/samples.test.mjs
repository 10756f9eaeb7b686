// The walkthrough's first file is a good text: the program finds nothing to say of it.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = new URL('../../../', import.meta.url);
const program = ['Release', 'Debug'].map((kind) => fileURLToPath(new URL(`src/ProcScript.Cli/bin/${kind}/net10.0/procscript.dll`, root))).find(existsSync);
const [, firstFile] = /```proc\n([^`]*)```/.exec(readFileSync(new URL('src/vscode/assets/walkthrough/write.md', root), 'utf8'));

test('the program finds nothing to say of it', { skip: program === undefined && 'the program is not built' }, () => {
  const { status, stdout, stderr } = spawnSync('dotnet', [program, 'check', '-', '--fail-on', 'hint', '--color', 'never'], {
    input: firstFile,
    encoding: 'utf8',
  });
  assert.equal(status, 0, stdout + stderr);
  assert.match(stdout, /checked 1 procedure in 1 file: all proven/);
});
