/** Packs the extension into one VSIX: bundles inside, no node_modules. `npm run package`, `-- PATH` to put it elsewhere. */
import { copyFileSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createVSIX } from '@vscode/vsce';

const folder = fileURLToPath(new URL('..', import.meta.url));
const vsix = process.argv[2] ? resolve(process.argv[2]) : `${folder}paintplan.vsix`;
copyFileSync(`${folder}../LICENSE`, `${folder}LICENSE`);
copyFileSync(`${folder}../language/CHANGELOG.md`, `${folder}CHANGELOG.md`);
await createVSIX({ cwd: folder, dependencies: false, packagePath: vsix, allowMissingRepository: true });
console.log(`${vsix} ${Math.round(statSync(vsix).size / 1000)} KB`);
