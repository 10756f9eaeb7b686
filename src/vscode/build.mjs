// Lays out the whole extension in dist: what is in that folder is what is packaged.
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { build } from 'esbuild';

const here = new URL('./', import.meta.url);
const dist = new URL('dist/', here);

rmSync(dist, { recursive: true, force: true });
mkdirSync(dist);
cpSync(new URL('assets/', here), dist, { recursive: true });
for (const [from, to] of [
  ['../../grammar/procscript.tmLanguage.json', 'procscript.tmLanguage.json'],
  ['../../grammar/settings.schema.json', 'settings.schema.json'],
  ['../../LICENSE', 'LICENSE.txt'],
  ['README.md', 'README.md'],
]) {
  cpSync(new URL(from, here), new URL(to, dist));
}
// A package for one platform brings the program: the folder that src/packaging/binaries.sh made it in.
const program = process.env.PROCSCRIPT_PROGRAM;
if (program !== undefined && program !== '') {
  const binary = ['procscript', 'procscript.exe'].find((name) => existsSync(join(program, name)));
  if (binary === undefined) {
    throw new Error(`There is no program in PROCSCRIPT_PROGRAM=${program}.`);
  }
  mkdirSync(new URL('bin/', dist));
  for (const name of [binary, 'THIRD-PARTY-NOTICES.md', 'DOTNET-NOTICES.txt']) {
    cpSync(join(program, name), new URL(`bin/${name}`, dist));
  }
}
writeFileSync(new URL('icon.png', dist), new Resvg(readFileSync(new URL('assets/icon.svg', here), 'utf8')).render().asPng());
writeFileSync(new URL('package.json', dist), manifest());
await build({
  absWorkingDir: here.pathname,
  entryPoints: ['source/extension.ts'],
  outfile: 'dist/extension.cjs',
  bundle: true,
  minify: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  external: ['vscode'],
  legalComments: 'none',
});

/** What the editor reads, without what only a build needs. */
function manifest() {
  const {
    scripts,
    dependencies,
    devDependencies,
    private: _,
    ...published
  } = JSON.parse(readFileSync(new URL('package.json', here), 'utf8'));
  return `${JSON.stringify(published, null, 2)}\n`;
}
