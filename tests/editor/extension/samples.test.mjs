// The snippets as they come out untouched, and the walkthrough's first file, are good texts: the program finds nothing to say of them.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = new URL('../../../', import.meta.url);
const program = ['Release', 'Debug'].map((kind) => fileURLToPath(new URL(`src/ProcScript.Cli/bin/${kind}/net10.0/procscript.dll`, root))).find(existsSync);
const snippets = JSON.parse(readFileSync(new URL('src/vscode/assets/snippets.json', root), 'utf8'));

/** A snippet's text with its suggestions taken, some of them replaced. */
function expanded(name, replacements = {}, inside = '') {
  const lines = [snippets[name].body].flat().join('\n');
  return lines
    .replace(/\$\{\d+\|([^,}]*)[^}]*\}/g, '$1')
    .replace(/\$\{\d+:([^}]*)\}/g, (_, suggestion) => replacements[suggestion] ?? suggestion)
    .replace(/\$0/g, inside);
}

const catalog = [
  'tool socket_10 "10 mm socket" { size 10 mm }',
  expanded('Fastener', { tool: 'socket_10' }),
].join('\n');
const held = 'held by 4 m6x20 as guard_bolts';
const kind = { kind: 'm6x20' };

const texts = {
  Machine: [catalog, expanded('Machine', {}, held)],
  Procedure: [catalog, expanded('Machine', {}, held), expanded('Procedure', { machine: 'harrow_h2' }).replace('    remove guard', '    undo guard_bolts\n    remove guard')],
  Part: [catalog, `machine m "m" {\n${expanded('Part', kind)}\n}`],
  Joint: [catalog, `machine m "m" { part lid { ${expanded('Joint', kind)} } }`],
  Fastener: [catalog],
  Energy: [`machine m "m" {\n${expanded('Energy')}\n}`],
  Fluid: [`machine m "m" {\n${expanded('Fluid')}\n}`],
  Stage: [catalog, `machine m "m" { part lid { ${expanded('Joint', kind)} } }`, `procedure p on m {\n  goal remove lid\n${expanded('Stage', {}, 'undo bolts  remove lid')}\n}`],
  'For each': [catalog, `machine m "m" {\n${expanded('For each', {}, 'part lid[side] { held by 1 m6x20 as bolt[side] }')}\n}`],
  'Refit rules': [catalog, `machine m "m" { part lid { ${expanded('Joint', kind)} } }`, `procedure p on m {\n  goal remove lid\n  stage "Lid" { undo bolts  remove lid }\n${expanded('Refit rules')}\n}`],
  'Test under power': [
    catalog,
    `machine m "m" {\n${expanded('Energy')}\npart guard { strip needs mains isolated  ${held} }\n}`,
    `procedure p on m {\n  goal remove guard\n  stage "Guard" { isolate mains  undo guard_bolts  remove guard }\n  refit { ${expanded('Test under power')} }\n}`,
  ],
  'Allow a finding': [
    'tool socket_10 "10 mm socket"\nfastener bare "bare" { thread M8x1.25  drive socket_10 }',
    `machine m "m" {\n  part lid {\n    ${expanded('Allow a finding', { reason: 'Set by feel.' })}\n    held by 1 bare as bolts\n  }\n}`,
    'procedure p on m {\n  goal remove lid\n  stage "Lid" { undo bolts  remove lid }\n}',
  ],
};

const [, firstFile] = /```proc\n([^`]*)```/.exec(readFileSync(new URL('src/vscode/assets/walkthrough/write.md', root), 'utf8'));

test('every snippet is tried', () => {
  assert.deepEqual(Object.keys(texts).sort(), Object.keys(snippets).sort());
});

test('the program finds nothing to say of any', { skip: program === undefined && 'the program is not built' }, () => {
  const library = mkdtempSync(join(tmpdir(), 'procscript-snippets-'));
  try {
    const samples = { ...texts, 'First file': [firstFile] };
    for (const [at, [name, parts]] of Object.entries(samples).entries()) {
      // A library has one procedure of a name.
      const text = parts.join('\n\n').replace('procedure p on', `procedure p_${at} on`);
      writeFileSync(join(library, `${name.replaceAll(' ', '-')}.proc`), text);
    }
    const { status, stdout, stderr } = spawnSync('dotnet', [program, 'check', '.', '--fail-on', 'hint', '--color', 'never'], {
      cwd: library,
      encoding: 'utf8',
    });
    assert.equal(status, 0, stdout + stderr);
    assert.match(stdout, new RegExp(`in ${Object.keys(samples).length} files`));
  } finally {
    rmSync(library, { recursive: true });
  }
});
