/** Where the command line lets `use` reach: below the working directory and below the folders of the named files. */
import { readFileSync } from 'node:fs';
import { dirname, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { PlanHost } from '../plan/host.ts';
import type { Elsewhere } from '../report/checked.ts';
import { nodeHost } from '../server/node-files.ts';
import type { Input } from './input.ts';

/** A host for `createAnalyser`'s analyser that reads only plan files there. */
export function hostFor(inputs: readonly Input[]): PlanHost {
  return nodeHost([...new Set([process.cwd(), ...inputs.map((i) => dirname(fileURLToPath(i.uri)))])]);
}

/** Other files' texts and paths for `checkedFile`, from the disk. */
export const elsewhere: Elsewhere = {
  text(uri) {
    try {
      return readFileSync(fileURLToPath(uri), 'utf8');
    } catch {
      return undefined;
    }
  },
  path(uri) {
    try {
      return relative(process.cwd(), fileURLToPath(uri)).split(sep).join('/');
    } catch {
      return uri;
    }
  },
};
