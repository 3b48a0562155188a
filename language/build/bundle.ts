/** Bundles the command line, the server (node and browser) and the extension. Run through `npm run build`. */
import { existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build } from 'esbuild';

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
};
const node: BuildOptions = { ...common, platform: 'node', format: 'esm', banner: { js: require } };

const bundles: readonly (BuildOptions & { entryPoints: string[]; outfile: string })[] = [
  { ...node, entryPoints: ['language/src/cli/main.ts'], outfile: 'language/out/cli.js' },
  { ...node, entryPoints: ['language/src/index.ts'], outfile: 'language/out/index.js' },
  { ...node, entryPoints: ['language/src/server/node.ts'], outfile: 'language/out/server.js' },
  {
    ...common,
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

for (const bundle of bundles) {
  const entry = bundle.entryPoints[0] as string;
  if (!existsSync(at(entry))) throw new Error(`${entry} is missing`);
  await build({ ...bundle, entryPoints: [at(entry)], outfile: at(bundle.outfile) });
  if (process.argv.includes('--sizes'))
    console.log(`${bundle.outfile} ${Math.round(statSync(at(bundle.outfile)).size / 1024)} KB`);
}
mkdirSync(at('language/out'), { recursive: true });
writeFileSync(at('language/out/built'), '');
