/** The texts that tests of the language work on: the shipped examples and the rich plans beside this file. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { PlanHost } from '../../language/src/plan/host.ts';

const root = new URL('../..', import.meta.url).pathname;
const under = (folder: string) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((f) => f.endsWith('.paintplan') && !f.startsWith('faulty'))
    .map((f) => join(root, folder, f));

export const samples: readonly { readonly name: string; readonly text: string }[] = [
  ...under('examples'),
  ...under('test/plan'),
].map((path) => ({ name: basename(path, '.paintplan'), text: readFileSync(path, 'utf8') }));

export const sample = (name: string): string => samples.find((s) => s.name === name)?.text ?? '';

/** All of them in one folder, for `use`. */
export const samplesHost: PlanHost = {
  resolve: (path) => ({ uri: `file:///${path}` }),
  read(uri) {
    const found = samples.find((s) => uri === `file:///${s.name}.paintplan`);
    return found ? { text: found.text } : { failed: 'missing' };
  },
};
