// Colours texts by their tree, with tree-sitter's own program, the parser and a query.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../../../', import.meta.url));
const folder = `${root}grammar/tree-sitter`;

/** What the program prints, run where the parser is. */
export function run(...args) {
  try {
    return execFileSync('./tree-sitter.sh', args, { cwd: folder, encoding: 'utf8', maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'pipe'] });
  } catch (failure) {
    // It fails on a text with an error, which is among what is asked.
    if (failure.status === 1 && failure.stdout) {
      return failure.stdout;
    }
    throw new Error(`tree-sitter ${args[0]}: ${failure.stderr || failure.message}`);
  }
}

/** The files that have something the parser could make no sentence of, or that lack something, with the first such place. */
export function broken(paths) {
  const lines = run('parse', '--quiet', ...paths).split('\n');
  return new Map(lines.map((line) => /^(.*?)\s*\t.*\((ERROR|MISSING)(.*)\)$/.exec(line)).filter(Boolean).map(([, path, what, where]) => [path, what + where]));
}

/**
 * The class of each byte of each file that a query colours, by `line:column`, from zero; where one piece stands within another, the
 * inner one's. Two classes for one piece are a fault of the query.
 */
export function colours(query, paths) {
  const files = new Map();
  let file;
  for (const line of run('query', '--captures', query, ...paths).split('\n')) {
    if (paths.includes(line)) {
      file = { lines: readFileSync(line, 'utf8').split('\n').map((text) => Buffer.from(text)), classes: new Map(), pieces: new Map() };
      files.set(line, file);
      continue;
    }
    const found = /capture: \d+ - (\S+), start: \((\d+), (\d+)\), end: \((\d+), (\d+)\)/.exec(line);
    if (found) {
      const [row, column, endRow, endColumn] = found.slice(2).map(Number);
      paint(file, found[1], { row, column, endRow, endColumn });
    }
  }
  return new Map([...files].map(([path, { classes }]) => [path, classes]));
}

function paint({ lines, classes, pieces }, name, { row, column, endRow, endColumn }) {
  const piece = `${row}:${column}-${endRow}:${endColumn}`;
  const other = pieces.get(piece);
  if (other && other !== name) {
    throw new Error(`${piece} is ${other} and ${name}`);
  }
  pieces.set(piece, name);
  for (let line = row; line <= endRow; line++) {
    const end = line === endRow ? endColumn : lines[line].length;
    for (let byte = line === row ? column : 0; byte < end; byte++) {
      classes.set(`${line}:${byte}`, name);
    }
  }
}

/** The words and signs of a text with the class that each byte of them has by TextMate: where they stand, and what they are. */
export function tokensOf(text, tokenize) {
  const lines = text.split(/\r?\n/);
  const reached = new Map();
  return tokenize(text).tokens.map(({ line, text: words, scope }) => {
    const start = lines[line - 1].indexOf(words, reached.get(line) ?? 0);
    reached.set(line, start + words.length);
    const column = Buffer.byteLength(lines[line - 1].slice(0, start));
    return { row: line - 1, column, length: Buffer.byteLength(words), words, scope: scope.replace('.procscript', '') };
  });
}
