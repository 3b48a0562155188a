#!/usr/bin/env node
import { existsSync } from 'node:fs';

const bundle = new URL('../out/cli.js', import.meta.url);
if (!existsSync(bundle)) {
  console.error(
    'paintplan is not built yet. Run `npm start` once in the clone (it installs and builds), then try again.',
  );
  process.exit(2);
}
const { main } = await import(bundle.href);
process.exitCode = await main(process.argv.slice(2));
