// Every token of the demo library, against the words of the language's own grammar.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { createTokenizer } from './tokenizer.mjs';

const root = new URL('../../../', import.meta.url);
const library = readdirSync(new URL('procedures/', root), { recursive: true }).filter((path) => path.endsWith('.proc'));
const words = [...read('grammar/ProcScriptLexer.g4').matchAll(/^[A-Z_]+\s*:\s*'([a-z]+)'/gm)].map((match) => match[1]);
const mayBeNames = namesOfTheGrammar();
const reserved = new Set(words.filter((word) => !mayBeNames.has(word)));
const mayBePositions = new Set(['on', 'in', 'to', 'at']);

const tokenize = await createTokenizer();
const colour = (text) => tokenize(text).tokens;
const own = (token) => token.scope.replace('.procscript', '');
const isName = (token) => /^(entity\.name\.(type|function)|variable|support\.class|constant\.other)/.test(own(token));
const inProse = (token) => token.scopes.some((name) => /^(string|comment)/.test(name));
const isPlainName = (token) => /^[\p{L}_][\p{L}_0-9]*$/u.test(token.text);

test('the demo library and the grammar are there', () => {
  assert.ok(library.length > 10);
  assert.ok(reserved.size > 50 && mayBeNames.size > 50);
});

test('a sample holds every word of the language', () => {
  const sample = new Set(
    colour(read('tests/editor/grammar/words.proc'))
      .filter((token) => !inProse(token))
      .map((token) => token.text),
  );
  assert.deepEqual(
    words.filter((word) => !sample.has(word)),
    [],
  );
});

test('every word of the language alone has a colour of its own', () => {
  const plain = words.filter((word) => isName(colour(word)[0]));
  assert.deepEqual(plain, []);
});

for (const path of library) {
  test(`procedures/${path}: every token has the colour of what it is`, () => {
    const { tokens, open } = tokenize(read(`procedures/${path}`));
    assert.equal(open, 0, 'a block is open at the end of the file');
    assert.deepEqual(tokens.flatMap(faults), []);
  });
}

/** What is wrong with the colour of a token. */
function faults(token) {
  const scope = own(token);
  if (inProse(token)) {
    return [];
  }
  const where = `${token.line}: '${token.text}' is ${scope}`;
  if (scope === 'source' || scope.startsWith('invalid')) {
    return [where];
  }
  if (reserved.has(token.text) && isName(token)) {
    return mayBePositions.has(token.text) && scope === 'constant.other.value' ? [] : [`${where}, and is no name`];
  }
  if (isPlainName(token) && !words.includes(token.text) && !isName(token) && scope !== 'keyword.other.unit') {
    return [`${where}, and is no word of the language`];
  }
  return /^[0-9]/.test(token.text) && !/^constant\./.test(scope) ? [`${where}, and is a figure`] : [];
}

/** The words that the parser takes for names, from its grammar. */
function namesOfTheGrammar() {
  const [, body] = /^name\n([^;]+);/m.exec(read('grammar/ProcScriptParser.g4'));
  const tokens = new Map([...read('grammar/ProcScriptLexer.g4').matchAll(/^([A-Z_]+)\s*:\s*'([a-z]+)'/gm)].map((match) => [match[1], match[2]]));
  return new Set([...body.matchAll(/\b[A-Z_]{2,}\b/g)].map((match) => tokens.get(match[0])).filter(Boolean));
}

function read(path) {
  return readFileSync(new URL(path, root), 'utf8');
}
