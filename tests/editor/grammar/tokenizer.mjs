// Colours a text as an editor does, with the engine that editors use.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(new URL('../../../src/vscode/package.json', import.meta.url));
const textmate = require('vscode-textmate');
const oniguruma = require('vscode-oniguruma');
const grammarFile = new URL('../../../grammar/procscript.tmLanguage.json', import.meta.url);

/** Loads the grammar and returns a function that splits a text into its tokens. */
export async function createTokenizer() {
  const engine = readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'));
  await oniguruma.loadWASM(engine);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(readFileSync(grammarFile, 'utf8'), grammarFile.pathname),
  });
  const grammar = await registry.loadGrammar('source.procscript');
  return (text) => tokens(grammar, text);
}

/** The tokens that are not blank, and how many blocks are open at the end. */
function tokens(grammar, text) {
  const found = [];
  let state = textmate.INITIAL;
  text.split(/\r?\n/).forEach((line, index) => {
    const result = grammar.tokenizeLine(line, state);
    state = result.ruleStack;
    for (const token of result.tokens) {
      const words = line.slice(token.startIndex, token.endIndex);
      if (words.trim() !== '') {
        found.push({ line: index + 1, text: words.trim(), scope: token.scopes.at(-1), scopes: token.scopes });
      }
    }
  });
  return { tokens: found, open: state.depth - 1 };
}
