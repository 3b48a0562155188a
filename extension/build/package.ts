/** Packs the extension into one VSIX: bundles inside, no node_modules. Run through `npm run package`. */
import { copyFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createVSIX } from '@vscode/vsce';

const folder = fileURLToPath(new URL('..', import.meta.url));
const vsix = `${folder}paintplan.vsix`;
copyFileSync(`${folder}../LICENSE`, `${folder}LICENSE`);
copyFileSync(`${folder}../language/CHANGELOG.md`, `${folder}CHANGELOG.md`);
await createVSIX({ cwd: folder, dependencies: false, packagePath: vsix, allowMissingRepository: true });
console.log(`${vsix} ${Math.round(statSync(vsix).size / 1000)} KB`);
