// What the tree-sitter grammar makes of texts: it takes what the parser takes, and colours every token as the TextMate grammar does.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { createTokenizer } from '../grammar/tokenizer.mjs';
import { broken, colours, root, run, tokensOf } from './tree.mjs';

const plainQuery = `${root}grammar/tree-sitter/queries/highlights.scm`;
const helixQueries = `${root}src/editors/helix/runtime/queries/procscript`;

/** The name of each TextMate class in the queries. */
const classes = new Map([
  ['comment.line.double-slash', 'comment'],
  ['string.quoted.double', 'string'],
  ['constant.character.escape', 'string.escape'],
  ['variable.parameter.placeholder', 'variable.parameter.placeholder'],
  ['storage.type', 'keyword.type'],
  ['storage.modifier.joint', 'keyword.modifier'],
  ['keyword.control.action', 'function.builtin'],
  ['keyword.other.alert', 'keyword.exception'],
  ['keyword.control.flow', 'keyword.conditional'],
  ['keyword.other', 'keyword'],
  ['support.type.property-name', 'property'],
  ['constant.language.state', 'constant.builtin'],
  ['constant.other.value', 'constant'],
  ['constant.other.mark', 'constant.mark'],
  ['constant.numeric', 'number'],
  ['keyword.other.unit', 'type.unit'],
  ['entity.name.type', 'type.definition'],
  ['entity.name.function', 'function'],
  ['support.class.kind', 'type'],
  ['variable.other.item', 'variable'],
  ['variable.parameter', 'variable.parameter'],
  ['keyword.operator', 'operator'],
  ['punctuation.separator', 'punctuation.delimiter'],
  ['punctuation.section', 'punctuation.bracket'],
]);

/** Where the tree knows better than a pattern that sees one line: the TextMate class, the class in the tree, and why. */
const knownBetter = [
  ['variable.other.item', 'constant', /^(up|down|open|back|forward|middle|none)$/, 'a position far from its control; nothing carried'],
  ['keyword.control.flow', 'keyword', /^refit$/, 'a figure of the refit is no block of it'],
  ['keyword.control.action', 'property', /^aside$/, 'what must be put aside, as a property'],
  ['keyword.control.action', 'keyword', /^strip$/, 'a figure of the strip'],
  ['variable.other.item', 'property', /^figure$/, 'a figure of the strip'],
  ['variable.other.item', 'keyword', /^rest$/, 'the rest of a joint that is discarded'],
  [/^(keyword\.operator|variable\.other\.item)$/, 'type.unit', /^(\.|m)$/, 'a unit that goes on in the next line'],
  ['variable.other.item', 'constant.mark', /^UNC$/, 'a thread that goes on in the next line'],
];

const tokenize = await createTokenizer();
const library = files('procedures');
const cases = files('tests/cases');
const words = `${root}tests/editor/grammar/words.proc`;
const samples = [...library, ...files('tests/editor/neovim'), words, ...cases];
const coloured = colours(plainQuery, samples);
const withErrors = broken(samples);
const scratch = mkdtempSync(join(tmpdir(), 'procscript-colours-'));
after(() => rmSync(scratch, { recursive: true }));

test('the parser is the one of grammar.js, and of a kind that Neovim and Helix read', () => {
  execFileSync(`${root}grammar/tree-sitter/generate.sh`, ['--check'], { stdio: 'pipe' });
  assert.match(readFileSync(`${root}grammar/tree-sitter/src/parser.c`, 'utf8'), /^#define LANGUAGE_VERSION 14$/m);
});

test('what the parser takes has no error, and what it does not take has one', () => {
  assert.ok(library.length > 10 && cases.length > 500);
  // The end of the sample of words is two sentences in no block.
  assert.deepEqual(
    samples.filter((path) => !cases.includes(path) && withErrors.has(path)),
    [words],
  );
  const wrong = cases.filter((path) => withErrors.has(path) && !hasSyntaxFinding(path));
  assert.deepEqual(wrong, []);
  assert.ok(cases.filter((path) => withErrors.has(path)).length >= 8);
});

for (const [name, paths] of [
  ['the demo library', library],
  ['the sample of every word', [words]],
  ['the cases', cases.filter((path) => !withErrors.has(path))],
]) {
  test(`${name}: every token has the colour that TextMate gives it`, () => {
    const { tokens, faults } = compare(paths);
    assert.ok(tokens > 900, `${tokens} tokens`);
    assert.deepEqual(faults, []);
  });
}

test('a line that is broken does not spoil the next', () => {
  const [machine, procedure] = ['machine.proc', 'seat-out.proc'].map((name) => library.find((path) => path.endsWith(name)));
  const variants = [machine, procedure].flatMap((path) => brokenVariants(path));
  const painted = colours(
    plainQuery,
    variants.map(({ path }) => path),
  );
  const tokens = new Map([machine, procedure].map((path) => [path, tokensOf(readFileSync(path, 'utf8'), tokenize)]));
  const others = variants.flatMap((variant) => tokens.get(variant.original).map((token) => ({ ...variant, ...token })));
  const faults = others
    .filter(({ row, line }) => row !== line)
    .map((other) => ({ ...other, place: `${other.row}:${other.column}` }))
    .map((other) => ({ ...other, is: painted.get(other.path).get(other.place), was: coloured.get(other.original).get(other.place) }))
    .filter(({ is, was }) => is !== was)
    .map(({ original, line, row, words: text, is, was }) => `${original}:${line + 1} spoils ${row + 1}: '${text}' is ${is}, was ${was}`);
  console.log(`${variants.length} broken lines: ${faults.length} of ${others.length} tokens on other lines change`);
  assert.ok(variants.length > 100, `${variants.length} variants`);
  assert.ok(faults.length < others.length / 2000, faults.slice(0, 20).join('\n'));
});

test('a sentence without its name ends where the next one begins', () => {
  const path = join(scratch, 'unfinished.proc');
  writeFileSync(path, 'procedure p on m {\n  stage "S" {\n    undo\n    remove seat\n    set lever to\n    part\n  }\n}\n');
  const map = colours(plainQuery, [path]).get(path);
  const at = (line, column) => map.get(`${line}:${column}`);
  assert.deepEqual([at(2, 4), at(3, 4), at(3, 11), at(4, 4), at(4, 8)], ['function.builtin', 'function.builtin', 'variable', 'function.builtin', 'variable']);
});

test('the queries of Helix fit the same nodes', () => {
  const helix = colours(`${helixQueries}/highlights.scm`, library);
  const names = new Map();
  for (const path of library) {
    const [plain, other] = [coloured.get(path), helix.get(path)];
    assert.deepEqual([...other.keys()], [...plain.keys()], path);
    for (const [place, name] of plain) {
      names.set(name, (names.get(name) ?? new Set()).add(other.get(place)));
    }
  }
  assert.ok(names.size > 20);
  assert.deepEqual(
    [...names].filter(([, others]) => others.size !== 1),
    [],
  );
  assert.match(run('query', `${helixQueries}/indents.scm`, library[0]), /indent/);
});

test('what has braces folds', () => {
  const folds = run('query', '--captures', `${root}grammar/tree-sitter/queries/folds.scm`, words).split('fold, start').length - 1;
  const braces = tokensOf(readFileSync(words, 'utf8'), tokenize).filter(({ words: sign, scope }) => scope === 'punctuation.section' && sign === '{');
  assert.equal(folds, braces.length);
});

/** How many tokens were compared, and which of them have another colour. */
function compare(paths) {
  let tokens = 0;
  const faults = [];
  for (const path of paths) {
    const map = coloured.get(path) ?? new Map();
    for (const { row, column, length, words: text, scope } of tokensOf(readFileSync(path, 'utf8'), tokenize)) {
      tokens++;
      const found = [...new Set(Array.from({ length }, (_, i) => map.get(`${row}:${column + i}`)))];
      // The tree has a comment that silences a rule as one piece.
      const isRight = (found.length === 1 && (found[0] === classes.get(scope) || found[0] === 'keyword.directive')) || isBetter(scope, found, text);
      if (!isRight) {
        faults.push(`${path}:${row + 1}: '${text}' is ${found.join(' and ')}, by TextMate ${scope}`);
      }
    }
  }
  return { tokens, faults };
}

function isBetter(scope, found, text) {
  return knownBetter.some(([theirs, ours, which]) => (theirs.test?.(scope) ?? theirs === scope) && found.join() === ours && which.test(text));
}

/** A file with each of its lines broken in turn: without its last word, and the next with a word that does not belong there. */
function brokenVariants(original) {
  const lines = readFileSync(original, 'utf8').split('\n');
  return lines.flatMap((text, line) => {
    // A brace that goes is not the line's own matter: the block of all that follows does.
    const shortened = text.replace(/(\s+)[^\s{}"/]+\s*$/, '');
    const strange = text.replace(/^(\s*)(\w+)/, '$1unscrew $2');
    return [shortened, strange]
      .filter((changed) => changed !== text && changed.trim() !== '' && !text.trimStart().startsWith('//'))
      .filter((_, i) => (line + i) % 2 === 0)
      .map((changed, i) => {
        const path = join(scratch, `${original.split('/').at(-1)}-${line}-${i}.proc`);
        writeFileSync(path, lines.with(line, changed).join('\n'));
        return { path, line, original };
      });
  });
}

/** Whether the case says that the parser did not take one of its sources, or had to look past something in it. */
function hasSyntaxFinding(path) {
  for (let folder = path.slice(0, path.lastIndexOf('/')); folder.length > root.length; folder = folder.slice(0, folder.lastIndexOf('/'))) {
    try {
      return /PRC10\d\d/.test(readFileSync(`${folder}/findings.txt`, 'utf8'));
    } catch {
      // The findings stand beside the library's root.
    }
  }
  return false;
}

function files(folder) {
  return readdirSync(root + folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.proc'))
    .map((entry) => `${entry.parentPath}/${entry.name}`);
}
