/** Bundles the command line, the library, the server and the extension, with their notices. Run through `npm run build`. */
import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build, type Metafile } from 'esbuild';
import { leftOut, namedTypes } from './left-out.ts';
import { notices } from './notices.ts';
import { packedData } from './packed.ts';

const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

// commander and picocolors are CommonJS and call require for Node's own modules
const require =
  "import { createRequire as paintplanRequire } from 'node:module'; const require = paintplanRequire(import.meta.url);";

const common: BuildOptions = {
  bundle: true,
  minify: true,
  sourcemap: false,
  charset: 'utf8',
  target: 'es2023',
  logLevel: 'warning',
  legalComments: 'none',
  metafile: true,
  plugins: [leftOut, packedData],
};
const server: BuildOptions = { plugins: [leftOut, namedTypes, packedData] };
const node: BuildOptions = { ...common, platform: 'node', format: 'esm', banner: { js: require } };

const bundles: readonly (BuildOptions & { entryPoints: string[]; outfile: string })[] = [
  { ...node, entryPoints: ['language/src/cli/main.ts'], outfile: 'language/out/cli.js' },
  // the library runs wherever there is JavaScript; only its door to a disk is Node's
  {
    ...common,
    platform: 'browser',
    format: 'esm',
    entryPoints: ['language/src/index.ts'],
    outfile: 'language/out/index.js',
  },
  { ...node, entryPoints: ['language/src/cli/library.ts'], outfile: 'language/out/node.js' },
  { ...node, ...server, entryPoints: ['language/src/server/node.ts'], outfile: 'language/out/server.js' },
  {
    ...common,
    ...server,
    platform: 'node',
    // one server for both hosts: the half of the protocol library that the other host needs is not run
    conditions: ['browser'],
    format: 'iife',
    entryPoints: ['extension/src/server.ts'],
    outfile: 'extension/out/server.js',
  },
  {
    ...common,
    platform: 'node',
    format: 'cjs',
    external: ['vscode'],
    entryPoints: ['extension/src/node.ts'],
    outfile: 'extension/out/node.js',
  },
  {
    ...common,
    platform: 'browser',
    format: 'cjs',
    external: ['vscode'],
    entryPoints: ['extension/src/browser.ts'],
    outfile: 'extension/out/browser.js',
  },
];

const packed: Record<'language' | 'extension', Metafile[]> = { language: [], extension: [] };
for (const bundle of bundles) {
  const entryPoints = bundle.entryPoints.map(at);
  const { metafile } = await build({
    ...bundle,
    entryPoints,
    outfile: at(bundle.outfile),
    absWorkingDir: at(''),
  });
  if (metafile) packed[bundle.outfile.startsWith('language/') ? 'language' : 'extension'].push(metafile);
  if (process.argv.includes('--sizes'))
    console.log(`${bundle.outfile} ${Math.round(statSync(at(bundle.outfile)).size / 1024)} KB`);
}
for (const [folder, metafiles] of Object.entries(packed))
  writeFileSync(at(`${folder}/THIRD-PARTY-NOTICES.md`), notices(metafiles, at('')));
mkdirSync(at('language/out'), { recursive: true });
writeFileSync(at('language/out/built'), '');
