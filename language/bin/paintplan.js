#!/usr/bin/env node
import { existsSync } from 'node:fs';
import module from 'node:module';

const NEEDED = 22;
const bundle = new URL('../out/cli.js', import.meta.url);
if (Number.parseInt(process.versions.node, 10) < NEEDED) {
  console.error(
    `paintplan needs Node ${NEEDED} or later; this is Node ${process.versions.node}. Install a newer Node, then try again.`,
  );
  process.exit(2);
}
if (!existsSync(bundle)) {
  console.error(
    'paintplan is not built yet. Run `npm start` once in the clone (it installs and builds), then try again.',
  );
  process.exit(2);
}
// the second run of a command need not compile the bundle again
module.enableCompileCache?.();
const { start } = await import(bundle.href);
await start(process.argv.slice(2));
