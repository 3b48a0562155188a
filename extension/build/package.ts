/** Packs the extension into one VSIX, with its bundles inside and no node_modules. */
import { copyFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createVSIX } from '@vscode/vsce';

const folder = fileURLToPath(new URL('..', import.meta.url));
copyFileSync(fileURLToPath(new URL('../../LICENSE', import.meta.url)), `${folder}/LICENSE`);
await createVSIX({
  cwd: folder,
  dependencies: false,
  packagePath: `${folder}/paintplan.vsix`,
  allowMissingRepository: true,
});
