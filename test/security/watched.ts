/**
 * Programs run under Node's permission model, which refuses what is not allowed, and under watch.cjs, which tells what
 * was tried: reading the folders named, and nothing else (no writing, no child process, no worker).
 */
import { copyFileSync, cpSync, existsSync, mkdirSync, mkdtempSync, realpathSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const repository = resolve(here, '..', '..');

export const HOOK = join(here, 'watch.cjs');

export interface Used {
  readonly kind: 'file' | 'network' | 'process';
  readonly name: string;
  readonly what: readonly string[];
}

/** What a program did, from its standard error; `rest` is what it said itself. */
export function usedIn(errors: string): { readonly used: readonly Used[]; readonly rest: string } {
  const lines = errors.split('\n');
  return {
    used: lines.filter((l) => l.startsWith('USED ')).map((l) => JSON.parse(l.slice(5)) as Used),
    rest: lines.filter((l) => !l.startsWith('USED ')).join('\n'),
  };
}

const PERMISSION = process.allowedNodeEnvironmentFlags.has('--permission')
  ? '--permission'
  : '--experimental-permission';

/** Flags for Node: refuse all but reading the folders, and tell what is tried. */
export const confined = (folders: readonly string[]): string[] => [
  PERMISSION,
  ...[HOOK, ...folders].map((f) => `--allow-fs-read=${f}`),
  '--require',
  HOOK,
];

const WRITES =
  /^(append|chmod|chown|copy|cp|createWrite|lch|link|lut|mk|rename|rm|sym|trunc|unlink|utimes|write)|for writing$/;

/** What it did that it should not have: anything outside the folders, anything written, any network or process. */
export function astray(used: readonly Used[], folders: readonly string[]): string[] {
  const inside = (path: string) =>
    path.startsWith('descriptor ') ||
    folders.some((f) => !relative(f, resolve(pathOf(path))).startsWith('..'));
  return used
    .filter((u) => u.kind !== 'file' || WRITES.test(u.name) || !u.what.every(inside))
    .map((u) => `${u.kind} ${u.name} ${u.what.join(' ')}`);
}

const pathOf = (text: string) => (text.startsWith('file:') ? fileURLToPath(text) : text);

export const temporary = (): string => realpathSync(mkdtempSync(join(tmpdir(), 'paintplan-confined-')));

/** The bundles as a user has them: in a folder of their own, with the manifest beside them and no node_modules. */
export function installed(base: string): { readonly language: string; readonly extension: string } {
  const language = join(base, 'language');
  for (const part of ['bin', 'out', 'package.json'])
    cpSync(join(repository, 'language', part), join(language, part), { recursive: true });
  const extension = join(base, 'extension');
  mkdirSync(join(extension, 'out'), { recursive: true });
  copyFileSync(join(repository, 'extension', 'package.json'), join(extension, 'package.json'));
  cpSync(join(repository, 'extension', 'out'), join(extension, 'out'), { recursive: true });
  if (!existsSync(join(language, 'out', 'server.js')))
    throw new Error('The bundles are not built: npm run build');
  return { language, extension };
}
