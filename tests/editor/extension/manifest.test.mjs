// What the extension's manifest names is there, and what the extension registers is in the manifest.
import assert from 'node:assert/strict';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';

const extension = new URL('../../../src/vscode/', import.meta.url);
const manifest = JSON.parse(readFileSync(new URL('package.json', extension), 'utf8'));
const { contributes } = manifest;
const source = readdirSync(new URL('source/', extension))
  .map((file) => readFileSync(new URL(`source/${file}`, extension), 'utf8'))
  .join('\n');
const build = readFileSync(new URL('build.mjs', extension), 'utf8');
const commands = contributes.commands.map(({ command }) => command);

const registered = [...source.matchAll(/registerCommand\('([\w.]+)'/g)].map((match) => match[1]);
const isView = (command) => command.startsWith('procscript.view.');

test('every command is registered, and every registered one can be found by its title', () => {
  assert.deepEqual(registered.filter((command) => !isView(command)).sort(), [...commands].sort());
});

test('every command that the lenses and offers of the server name is registered', () => {
  const server = (file) => readFileSync(new URL(`../ProcScript.LanguageServer/Features/${file}.cs`, extension), 'utf8');
  const names = new Map([...server('ViewMethods').matchAll(/const string (\w+) = "(procscript\.view\.\w+)"/g)].map(([, constant, name]) => [constant, name]));
  const named = [...`${server('LensMethods')}${server('BackView')}`.matchAll(/ViewMethods\.(\w+)\)/g)].map(([, constant]) => names.get(constant));
  assert.equal(named.length, 4);
  assert.deepEqual(registered.filter(isView).sort(), named.sort());
});

test('every setting is described, and every one that is read exists', () => {
  const settings = contributes.configuration.properties;
  for (const [name, setting] of Object.entries(settings)) {
    assert.ok(setting.markdownDescription?.endsWith('.'), `${name} is not described`);
    assert.notEqual(setting.default, undefined, `${name} has no default`);
  }
  const read = [...source.matchAll(/getConfiguration\('procscript'\)\.get<\w+>\('([\w.]+)'/g)].map((match) => `procscript.${match[1]}`);
  assert.ok(read.length > 0);
  assert.deepEqual(
    read.filter((name) => !(name in settings)),
    [],
  );
});

test('a folder that is not trusted cannot name the program to run', () => {
  const { untrustedWorkspaces } = manifest.capabilities;
  assert.equal(untrustedWorkspaces.supported, 'limited');
  assert.deepEqual(untrustedWorkspaces.restrictedConfigurations, ['procscript.path']);
});

test('every file of the manifest is laid out by the build', () => {
  const { languages, grammars, jsonValidation, walkthroughs } = contributes;
  const own = languages.filter(({ configuration }) => configuration !== undefined);
  assert.equal(own.length, 1);
  const files = [
    manifest.icon,
    manifest.main,
    ...own.flatMap((language) => [language.configuration, language.icon.light, language.icon.dark]),
    ...grammars.map(({ path }) => path),
    ...jsonValidation.map(({ url }) => url),
    ...walkthroughs.flatMap(({ steps }) => steps.map(({ media }) => media.markdown)),
  ].map((path) => path.replace(/^\.\//, ''));
  const missing = files.filter((path) => !existsSync(new URL(`assets/${path}`, extension)) && !build.includes(path));
  assert.deepEqual(missing, []);
});

test('each sentence is offered once: by the server, which knows where it fits', () => {
  assert.equal(contributes.snippets, undefined);
});

test('the walkthrough leads to commands of the extension or of the editor', () => {
  const links = contributes.walkthroughs.flatMap(({ steps }) => steps.flatMap(({ description }) => [...description.matchAll(/command:([\w.]+)/g)]));
  const own = links.map((match) => match[1]).filter((command) => command.startsWith('procscript.'));
  assert.ok(own.length > 0);
  assert.deepEqual(
    own.filter((command) => !commands.includes(command)),
    [],
  );
});
