/** What is paid once: starting the command line beside bare Node, and the sizes of what is shipped. */
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ms, quantile, type Table, times } from './table.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ROUNDS = 15;

function wholeProcess(...args: string[]): number {
  const taken = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    spawnSync(process.execPath, args, { cwd: root, stdio: 'ignore' });
    return performance.now() - start;
  });
  return quantile(taken, 0.5);
}

export function starting(): Table {
  const bare = wholeProcess('-e', '0');
  const cli = 'language/bin/paintplan.js';
  const plan = 'examples/still-life.paintplan';
  const row = (name: string, ...args: string[]) => {
    const taken = wholeProcess(...args);
    return [name, times(taken / bare), ms(taken)];
  };
  return {
    title: 'A command, from start to end',
    how: `The whole process, p50 of ${ROUNDS} runs, beside Node doing nothing.`,
    head: ['command', 'ratio to bare Node', 'time'],
    rows: [
      ['node -e 0', times(1), ms(bare)],
      row('paintplan check PLAN', cli, 'check', plan),
      row('paintplan study PLAN', cli, 'study', plan),
      row('paintplan check on every example', cli, 'check', 'examples'),
    ],
  };
}

/** Kilobytes that each may have; a thousand bytes to one. */
const BUDGETS = { 'extension/out/server.js': 1000, 'extension/paintplan.vsix': 900 } as const;
const SHIPPED = [
  'extension/paintplan.vsix',
  'extension/out/server.js',
  'extension/out/node.js',
  'extension/out/browser.js',
  'language/out/cli.js',
  'language/out/index.js',
];

export const sizes = (): Table => ({
  title: 'Sizes',
  how: 'The packed extension with all data, and bundles, in thousands of bytes.',
  head: ['file', 'share of its budget', 'size'],
  rows: SHIPPED.filter((path) => existsSync(join(root, path))).map((path) => {
    const size = statSync(join(root, path)).size / 1000;
    const budget = (BUDGETS as Record<string, number>)[path];
    return [path, budget ? times(size / budget) : '', `${Math.round(size).toLocaleString('en')} KB`];
  }),
});
