/** Makes everything of the npm package that is not in the repository: the types, the licence. Run by `npm pack`. */
import { copyFileSync, existsSync } from 'node:fs';

const here = (path: string) => new URL(`../${path}`, import.meta.url);

copyFileSync(new URL('../../LICENSE', import.meta.url), here('LICENSE'));
await import('./types.ts');
const missing = [
  'out/index.js',
  'out/node.js',
  'out/cli.js',
  'out/server.js',
  'THIRD-PARTY-NOTICES.md',
].filter((path) => !existsSync(here(path)));
if (missing.length > 0) {
  console.error(`Nothing is packed without ${missing.join(', ')}: run npm run build, then try again.`);
  process.exitCode = 1;
}
