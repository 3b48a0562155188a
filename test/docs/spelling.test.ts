/** British spelling in every page, example, message and source text. Terms of the trade are in .cspell-words.txt. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const words = readFileSync(`${root}.cspell-words.txt`, 'utf8').trimEnd().split('\n');

const cspell = (args: readonly string[], input?: string) =>
  spawnSync(process.execPath, [`${root}node_modules/cspell/bin.mjs`, ...args], {
    cwd: root,
    encoding: 'utf8',
    input,
  });

test('every word is spelt', { timeout: 120_000 }, () => {
  const { stdout, stderr, status } = cspell(['lint', '--no-progress', '--unique']);
  expect(stdout).toBe('');
  expect(status).toBe(0);
  // "CSpell: Files checked: …, Issues found: 0": a check of nothing is no check
  expect(Number(/Files checked: (\d+)/.exec(stderr)?.[1])).toBeGreaterThan(300);
});

describe('the check can fail', () => {
  const slips = (text: string) =>
    cspell(['lint', '--no-progress', '--no-summary', '--language-id', 'markdown', 'stdin://page.md'], text)
      .stdout;

  test('on a slip, and on an American form', { timeout: 60_000 }, () => {
    const said = slips('A glaaze of thin color over a gray grisaille, and a catalog of colours.\n');
    for (const word of ['glaaze', 'color', 'gray', 'catalog']) expect(said, word).toContain(`(${word})`);
    expect(said).not.toContain('grisaille');
    expect(said).not.toContain('(colours)');
  });
});

describe('the list of words', () => {
  test('is sorted, each word once', () => {
    const low = words.map((w) => w.toLowerCase());
    expect(low).toEqual([...new Set(low)].sort());
  });

  test('holds words, no sentences', () => {
    for (const word of words) expect(word).toMatch(/^\p{L}+$/u);
  });
});
