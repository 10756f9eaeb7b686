// The configuration for Helix says what the program and the language are. Helix itself is run by run.sh.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';

const root = new URL('../../../', import.meta.url);
const read = (path) => readFileSync(new URL(path, root), 'utf8');
const extension = new URL('src/vscode/package.json', root);
const { parse } = createRequire(extension)('smol-toml');

const { language, grammar, 'language-server': servers, ...rest } = parse(read('src/editors/helix/languages.toml'));
const { contributes } = JSON.parse(readFileSync(extension, 'utf8'));
const [known] = contributes.languages;
const defaults = contributes.configurationDefaults[`[${known.id}]`];

// As Helix names them in its book, "Languages".
const ofLanguages = ['name', 'scope', 'file-types', 'roots', 'comment-token', 'indent', 'rulers', 'auto-format', 'language-servers'];
const ofServers = ['command', 'args'];

test('there are the language and its server, and no key that Helix would not read', () => {
  assert.deepEqual(rest, {});
  assert.deepEqual(
    Object.keys(language[0]).filter((key) => !ofLanguages.includes(key)),
    [],
  );
  assert.deepEqual(
    Object.values(servers).flatMap((server) => Object.keys(server).filter((key) => !ofServers.includes(key))),
    [],
  );
});

test('the grammar is the one of this repository, and its queries are named as the language', () => {
  const [{ name, source, ...others }, ...more] = grammar;
  assert.deepEqual([others, more, Object.keys(source)], [{}, [], ['path']]);
  assert.equal(name, language[0].name);
  assert.match(source.path, /\/grammar\/tree-sitter$/);
  assert.match(read('grammar/tree-sitter/grammar.js'), new RegExp(`^ {2}name: '${name}',$`, 'm'));
  for (const file of ['grammar/tree-sitter/src/parser.c', 'grammar/tree-sitter/src/scanner.c', `src/editors/helix/runtime/queries/${name}/highlights.scm`]) {
    assert.ok(existsSync(new URL(file, root)), file);
  }
});

test('the server is a verb of the program, and the one that the language asks', () => {
  const [{ 'language-servers': asked }] = language;
  assert.deepEqual(asked, Object.keys(servers));
  for (const { command, args } of Object.values(servers)) {
    assert.equal(command, 'procscript');
    assert.equal(args.length, 1);
    assert.match(read('src/packaging/procscript.1'), new RegExp(`^\\.SS "?procscript ${args[0]}\\b`, 'm'));
    assert.match(read('src/vscode/source/serverConnection.ts'), new RegExp(`args: \\['${args[0]}'\\]`));
  }
});

test('the language is laid out as in the other editors', () => {
  const [{ name, scope, 'file-types': types, roots, 'comment-token': comment, indent, rulers }] = language;
  assert.equal(name, known.id);
  assert.equal(scope, JSON.parse(read('grammar/procscript.tmLanguage.json')).scopeName);
  assert.deepEqual(
    types.map((type) => `.${type}`),
    known.extensions,
  );
  assert.equal(comment, JSON.parse(read('src/vscode/assets/language-configuration.json')).comments.lineComment);
  assert.equal(indent['tab-width'], defaults['editor.tabSize']);
  assert.equal(indent.unit, ' '.repeat(defaults['editor.tabSize']));
  assert.deepEqual(rulers, defaults['editor.rulers']);
  assert.deepEqual(roots, ['procscript.json']);
});
