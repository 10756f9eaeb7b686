// Loads a module of the extension that does not need the editor.
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const extension = new URL('../../../src/vscode/', import.meta.url);
const { buildSync } = createRequire(new URL('package.json', extension))('esbuild');

/** The exports of a file in the extension's source folder. */
export async function load(file) {
  const built = buildSync({
    entryPoints: [fileURLToPath(new URL(`source/${file}`, extension))],
    bundle: true,
    // As in the package: what runs in a page is written into it from there.
    minify: true,
    target: 'node20',
    format: 'esm',
    platform: 'neutral',
    write: false,
  });
  return import(`data:text/javascript;base64,${Buffer.from(built.outputFiles[0].contents).toString('base64')}`);
}
