/** A copy of the project in a temporary folder, in which a contributor's steps are taken as DEVELOPERS.md tells them. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const LEFT_OUT = /(^|\/)(node_modules|out|shots)$/;

export const original = (path: string): string => readFileSync(join(root, path), 'utf8');
export const developers = original('DEVELOPERS.md');

/** The first example of DEVELOPERS.md after these words, in a fence of this kind. */
export function example(kind: string, after: string): string {
  const from = developers.indexOf(after);
  expect(from, `DEVELOPERS.md has no ‘${after}’`).toBeGreaterThanOrEqual(0);
  return new RegExp(`\`\`\`${kind}\\n([\\s\\S]*?)\`\`\``).exec(developers.slice(from))![1]!;
}

// what a test runner tells its own children is none of theirs, and what they print is read
const env = {
  ...Object.fromEntries(
    Object.entries(process.env).filter(([key]) => !/^(VITEST|NODE_OPTIONS|FORCE_COLOR|PAINTPLAN_)/.test(key)),
  ),
  NO_COLOR: '1',
};

/** `paths` below the root; node_modules is linked. */
export function scratch(name: string, paths: readonly string[]) {
  const folder = mkdtempSync(join(tmpdir(), `${name}-`));
  const copy = (path: string) =>
    cpSync(join(root, path), join(folder, path), { recursive: true, filter: (from) => !LEFT_OUT.test(from) });
  for (const path of paths) copy(path);
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  const node = (...args: string[]) =>
    spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8', env });
  return {
    /** Puts a path back as it is in the project. */
    restore(path: string): void {
      rmSync(join(folder, path), { recursive: true, force: true });
      copy(path);
    },
    read: (path: string): string => readFileSync(join(folder, path), 'utf8'),
    write(path: string, text: string): void {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    },
    /** Puts `text` in the place of `old`, which is there once. */
    replace(path: string, old: string, text: string): void {
      const before = readFileSync(join(folder, path), 'utf8');
      expect(before.split(old).length, `‘${old}’ in ${path}`).toBe(2);
      writeFileSync(
        join(folder, path),
        before.replace(old, () => text),
      );
    },
    node,
    /** What a module prints, as JSON. */
    printed(script: string) {
      const { stdout, stderr } = node('--input-type=module', '-e', script);
      expect(stderr).toBe('');
      return JSON.parse(stdout);
    },
    /** Runs a command that has to go through. */
    done(...args: string[]): string {
      const { status, stdout, stderr } = node(...args);
      expect(status, `${args.join(' ')}\n${stdout}\n${stderr}`).toBe(0);
      return stdout;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
